import { describe, expect, it } from "vitest";
import { computeLoadState, judgePlay, type LoadState, type SpringGeometry, type Support } from "#engines/linkage";
import { norm, type Vector } from "#numeric";
import { assembleCorner, familyFromSilhouette, STANDARD_GRAVITY } from "#vehicle";
import { modelOfAssembly } from "../../src/casework/fault/corner-model.ts";

/** The front double wishbone of the template with its spring moved onto the upper arm (docs/method/load-states.md, section 4). */
const made = familyFromSilhouette({ frontLayout: "double-wishbone" });
if (!("family" in made)) throw new Error("no family");
const a = assembleCorner(made.family, "front-left");
const { geometry } = modelOfAssembly(a);
const [front, rear, lower] = geometry.links;
if (!front || !rear || !lower) throw new Error("no arms");

/** Half way from the hinge of the upper arm to its outer joint, a little above it (invented). */
const middle = (i: number): number =>
  ((front.inner[i] as number) + (rear.inner[i] as number)) / 4 + (front.outer[i] as number) / 2;
const moving: Vector = [middle(0), middle(1), middle(2) + 0.02];
const body: Vector = [middle(0), middle(1) - 0.03, middle(2) + 0.32];
const onUpper: SpringGeometry = { body, seat: { on: "arm", links: [front.name, rear.name], moving } };
const onLower = geometry.damper;
if (!onLower) throw new Error("no damper");

function hold(damper: SpringGeometry, support: Support): LoadState {
  const question = {
    geometry: { ...geometry, spring: onUpper, damper },
    // A spring so far in works through a shorter lever and is stiffer for it.
    springRate: 2.2 * a.spring.rate,
    wheelLoad: a.wheelLoad,
    unsprungMass: a.unsprungMass,
    droop: a.droopStop,
    gravity: STANDARD_GRAVITY,
  };
  const found = computeLoadState(question, support);
  if (!("state" in found)) throw new Error(JSON.stringify(found));
  return found.state;
}

const under = (part: string): Support => ({ kind: "under", part, share: 0.85, raised: 0.025 });
const loadOf = (state: LoadState, link: string): number =>
  norm(state.joints.find((j) => j.link === link && j.end === "outer")?.force ?? [Number.NaN, 0, 0]);
const by = (state: LoadState, link: string) =>
  judgePlay(state, [1, 0, 0], { rock: 150, bar: 500 }).find((j) => j.link === link && j.end === "outer")?.by;

describe.each([
  ["the upper arm too", onUpper],
  ["the lower arm", onLower],
] as const)("a double wishbone with its spring on the upper arm and its damper on %s", (_, damper) => {
  const ride = hold(damper, { kind: "ride" });
  const hanging = hold(damper, { kind: "hanging" });

  it("carries the car through the upper joint, standing", () => {
    expect(loadOf(ride, front.name)).toBeGreaterThan(0.9 * a.wheelLoad);
    expect(loadOf(ride, front.name)).toBeGreaterThan(3 * loadOf(ride, lower.name));
    expect(by(ride, front.name)).toBe("nothing");
  });

  it("frees both joints when the upper arm is supported outboard, and neither when the lower one is", () => {
    const supported = hold(damper, under(front.name));
    expect(loadOf(supported, front.name)).toBeLessThan(0.15 * a.wheelLoad);
    expect([by(supported, front.name), by(supported, lower.name)]).toEqual(["hand", "hand"]);
    const wrong = hold(damper, under(lower.name));
    expect(loadOf(wrong, front.name)).toBeGreaterThan(4 * loadOf(supported, front.name));
    expect([by(wrong, front.name), by(wrong, lower.name)]).toEqual(["nothing", "nothing"]);
  });

  it("frees them with the wheel hanging only where the stop is in a damper on the upper arm", () => {
    const free = damper === onUpper;
    expect(by(hanging, front.name) === "hand").toBe(free);
    expect(loadOf(hanging, front.name) < 0.15 * a.wheelLoad).toBe(free);
  });
});
