import { describe, expect, it } from "vitest";
import { type Condition, computeFaultEffect } from "#casework";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { add, norm, rotate, subtract, type Vector } from "#numeric";
import { type Family, familyFromSilhouette } from "#vehicle";
import { modelCorner } from "../../src/casework/fault/corner-model.ts";
import { CornerState, loadOf } from "../../src/casework/fault/fault-states.ts";
import { LooseBallState } from "../../src/casework/fault/loose-ball.ts";

const ouzel = (): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets["ouzel-saloon"]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const strut = (): Family => {
  const made = familyFromSilhouette({ frontLayout: "strut", rearLayout: "five-link" });
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  return made.family;
};
const condition: Condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };
const PLAY = 0.002;

describe("a loose ball at the common end of an arm", () => {
  it.each([
    ["ouzel-saloon", ouzel()],
    ["strut silhouette", strut()],
  ] as const)("never lets the ball of %s leave its socket: half the play, one way for all legs", (_, family) => {
    const model = modelCorner(family, "front-left");
    const legs = model.assembly.links.filter(({ arm, name }) => arm !== null && name.startsWith("lower"));
    const [first] = legs;
    if (!first || legs.length < 2) throw new Error("no lower arm");
    for (const more of [{}, { braking: 0, lateral: 3000 }, { braking: -1500 }, { contactRise: 0.04 }]) {
      const load = loadOf({ ...condition, ...more }, false);
      const loose = new LooseBallState(
        model,
        legs.map(({ name }) => name),
        PLAY,
      ).solve(load);
      const sound = new CornerState(model, []).solve(load);
      if (!loose || !sound) throw new Error("no balance");
      const { centre } = model.geometry.wheel;
      const ball = (pose: { readonly t: ArrayLike<number>; readonly r: ArrayLike<number> }): Vector =>
        add(
          add(centre, [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number]),
          rotate(pose.r as Float64Array, subtract(first.outer.at, centre)),
        );
      // The bushes carry much the same force in both, so the knuckle's ball moves by what the socket lets it, and by no more than a little.
      const moved = norm(subtract(ball(loose.state.pose), ball(sound.state.pose)));
      expect(moved).toBeLessThan(1.15 * (PLAY / 2));
      expect(moved).toBeGreaterThan(0.5 * (PLAY / 2));
    }
  });

  it("is the plain play of a link where only one leg meets the joint", () => {
    const model = modelCorner(ouzel(), "front-left");
    const load = loadOf({ ...condition, lateral: 2500 }, false);
    const link = "tie-rod";
    const asBall = new LooseBallState(model, [link], PLAY).solve(load);
    const asPlay = new CornerState(model, [{ kind: "play", link, total: PLAY }]).solve(load);
    expect(asBall?.state.attitude.toe).toBeCloseTo(asPlay?.state.attitude.toe ?? Number.NaN, 10);
  });

  it("says how far the wheel can turn within the play, twice that of half of it", () => {
    const wander = (play: number): number | undefined => {
      const answer = computeFaultEffect(ouzel(), {
        corner: "front-left",
        position: "front-left/tie-rod/outer-joint",
        fault: { kind: "loose", play },
        condition,
      });
      if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
      return answer.effect.figures.find(({ key }) => key === "toe-wander")?.value;
    };
    expect((wander(0.001) ?? 0) / (wander(0.0005) ?? 1)).toBeCloseTo(2, 2);
  });
});
