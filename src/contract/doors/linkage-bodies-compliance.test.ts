import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { mapRequest } from "../../../test/fuzz/wire-corner.ts";
import { askDoor } from "../index.ts";

type Doc = Record<string, unknown>;
type State = {
  toe_deg: number;
  camber_deg: number;
  contact_change_mm: number[];
  link_force_n: Record<string, number>;
} & {
  band: { toe_sd_deg: number };
  less_sound: { toe_deg: number; toe_sd_deg: number; toe_band_deg: [number, number] };
  range: { toe_deg: [number, number] };
  others: unknown[];
  stable: boolean;
};

const layout = JSON.parse(
  readFileSync(new URL("../../../docs/examples/layouts/rear-integral-link.json", import.meta.url), "utf8"),
) as Doc & { links: Doc[] };

/** The example with an integral link and rubber (figures invented). */
const request: Doc = {
  layout,
  spring_n_per_mm: 70,
  wheel_load_n: 4200,
  rubber: [
    { part: "arm-front", radial_n_per_mm: 6000, axial_n_per_mm: 900, voided_n_per_mm: 2000, clocking_deg: 80 },
    { part: "arm-rear", radial_n_per_mm: 4000 },
    { part: "integral-link", end: "from", radial_n_per_mm: 8000, axial_n_per_mm: 1000, axis: [0, 1, 0.2] },
    {
      part: "toe-link",
      end: "from",
      radial_n_per_mm: 11000,
      axial_n_per_mm: 900,
      axis: [1, 0.1, 0],
      rate_sd_share: 0.2,
    },
  ],
  members: [{ link: "camber-link", n_per_mm: 90000 }],
  hold: "contact_height",
  sd_mm: { x: 2, y: 2, z: 1 },
  loads: [{ braking_n: 1500, lateral_n: 400, contact_rise_mm: 10 }],
};

const ask = (change: Doc): Doc => {
  const answer = askDoor("linkage.bodies-compliance", { ...request, ...change });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output as Doc;
};
const stateOf = (change: Doc = {}): State => (ask(change).states as State[])[0] as State;

const torn = { faults: [{ part: "arm-front", factor: 0.3 }] };

describe("a layout of two bodies with rubber, at the door", () => {
  it("says what a torn bush does, and how surely", () => {
    const [sound, faulty] = [stateOf(), stateOf(torn)];
    expect(faulty.less_sound.toe_deg).toBeCloseTo(faulty.toe_deg - sound.toe_deg, 12);
    expect(Math.abs(faulty.less_sound.toe_deg)).toBeGreaterThan(1e-3);
    // The same disturbance in both: a difference is known better than either.
    expect(faulty.less_sound.toe_sd_deg).toBeGreaterThan(0);
    expect(faulty.less_sound.toe_sd_deg).toBeLessThan(faulty.band.toe_sd_deg);
    expect(sound).not.toHaveProperty("less_sound");
    expect(stateOf({ sd_mm: undefined })).not.toHaveProperty("band");
  });

  it("gives what a range of a fault spans, and a band that holds it", () => {
    const ranged = stateOf({ faults: [{ part: "arm-front", factor: 0.3, factor_low: 0.2, factor_high: 0.4 }] });
    const at = (factor: number) => stateOf({ faults: [{ part: "arm-front", factor }] }).toe_deg;
    const [low, high] = ranged.range.toe_deg;
    expect(low).toBeCloseTo(Math.min(at(0.2), at(0.4)), 12);
    expect(high).toBeCloseTo(Math.max(at(0.2), at(0.4)), 12);
    const sound = stateOf().toe_deg;
    const [from, to] = ranged.less_sound.toe_band_deg;
    expect(from).toBeLessThan(low - sound);
    expect(to).toBeGreaterThan(high - sound);
    expect(stateOf(torn)).not.toHaveProperty("range");
  });

  it("answers a loose joint with every balance, and as sound where it does not move", () => {
    const loose = (total_mm: number) => stateOf({ faults: [{ part: "arm-ball", kind: "play", total_mm }] });
    expect(loose(0).toe_deg).toBe(stateOf().toe_deg);
    expect(loose(0.8).others).toEqual([]);
    expect(loose(0.8).stable).toBe(true);
    expect(Math.abs(loose(0.8).less_sound.toe_deg)).toBeGreaterThan(1e-3);
    const both = stateOf({
      faults: [
        { part: "toe-link", kind: "play", total_mm: 1, total_low_mm: 0.5, total_high_mm: 1.5 },
        { part: "toe-link", end: "from", factor: 0.5 },
      ],
    });
    expect(both.range.toe_deg[1] - both.range.toe_deg[0]).toBeGreaterThan(0.01);
  });

  it("answers with every part loose at once, and refuses only what cannot be looked through", () => {
    const parts = ["arm-front", "arm-rear", "arm-ball", "toe-link", "camber-link", "integral-link"];
    const faultsOf = (names: readonly string[]) => ({
      faults: names.map((part) => ({ part, kind: "play", total_mm: 1 })),
    });
    const all = stateOf(faultsOf(parts));
    expect(all.stable).toBe(true);
    expect(all.toe_deg).not.toBe(stateOf(faultsOf(parts.slice(1))).toe_deg);
    const links = Array.from({ length: 8 }, (_, i) => ({ ...layout.links[0], name: `link-${i}` }));
    const names = links.map(({ name }) => name);
    const answer = askDoor("linkage.bodies-compliance", {
      ...request,
      layout: { ...layout, links },
      ...faultsOf(names),
    });
    const findings = "findings" in answer ? answer.findings : [];
    expect(findings.find(({ path }) => path === "faults")).toMatchObject({
      code: "out-of-range",
      got: "8 parts with play: 6561 combinations of sides",
    });
  });

  it("answers for the right side as for the left one's mirror image", () => {
    const flip = ([x, y, z]: readonly [number, number, number]) => [x, -y, z] as const;
    const turned = mapRequest(
      { ...request, ...torn },
      { point: flip, direction: flip, figures: { lateral_n: (x) => -x, clocking_deg: (x) => -x } },
    ) as Doc;
    const answer = askDoor("linkage.bodies-compliance", { ...turned, side: "right" });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const [right] = (answer.output as { states: State[] }).states as [State];
    const left = stateOf(torn);
    expect(right.toe_deg).toBeCloseTo(left.toe_deg, 11);
    expect(right.camber_deg).toBeCloseTo(left.camber_deg, 11);
    expect(right.contact_change_mm[1]).toBeCloseTo(-(left.contact_change_mm[1] as number), 9);
    expect(right.less_sound.toe_sd_deg).toBeCloseTo(left.less_sound.toe_sd_deg, 11);
    expect(right.link_force_n["toe-link"]).toBeCloseTo(left.link_force_n["toe-link"] as number, 6);
  });

  it("counts what resists being turned, on both sides alike, and what of it a fault leaves", () => {
    const turning = (request.rubber as Doc[]).map((r) =>
      r.part === "arm-front" || r.end ? { ...r, conical_nm_per_deg: 7, torsional_nm_per_deg: 2.5 } : r,
    );
    const [free, held, torn_] = [stateOf(), stateOf({ rubber: turning }), stateOf({ rubber: turning, ...torn })];
    expect(Math.abs(held.toe_deg - free.toe_deg)).toBeGreaterThan(1e-5);
    // The same rubber torn without its rates against turns: what the fault leaves of them counts.
    expect(Math.abs(torn_.less_sound.toe_deg - stateOf(torn).less_sound.toe_deg)).toBeGreaterThan(1e-6);
    const flip = ([x, y, z]: readonly [number, number, number]) => [x, -y, z] as const;
    const mirrored = mapRequest(
      { ...request, rubber: turning },
      { point: flip, direction: flip, figures: { lateral_n: (x) => -x, clocking_deg: (x) => -x } },
    ) as Doc;
    const answer = askDoor("linkage.bodies-compliance", { ...mirrored, side: "right" });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const [right] = (answer.output as { states: State[] }).states as [State];
    expect(right.toe_deg).toBeCloseTo(held.toe_deg, 11);
    expect(right.band.toe_sd_deg).toBeCloseTo(held.band.toe_sd_deg, 11);
  });

  const rubber = request.rubber as Doc[];
  const withEntry = (i: number, change: Doc) => ({ rubber: rubber.map((r, k) => (k === i ? { ...r, ...change } : r)) });
  const { spring: _spring, ...springless } = layout;
  it.each<[string, Doc, string, string]>([
    ["a part nobody listed", withEntry(1, { part: "arm-raer" }), "unknown-name", "rubber[1].part"],
    ["an end of a link not said", withEntry(2, { end: undefined }), "missing-key", "rubber[2].end"],
    ["an end of a joint", withEntry(1, { end: "to" }), "key-not-used-here", "rubber[1].end"],
    ["an axis of no length", withEntry(2, { axis: [0, 0, 0] }), "zero-axis", "rubber[2].axis"],
    [
      "an axis without its rate",
      withEntry(2, { axial_n_per_mm: undefined }),
      "missing-key",
      "rubber[2].axial_n_per_mm",
    ],
    ["voids without their angle", withEntry(0, { clocking_deg: undefined }), "missing-key", "rubber[0].clocking_deg"],
    [
      "a turn of an end without axis",
      withEntry(2, { axis: undefined, axial_n_per_mm: undefined, conical_nm_per_deg: 5 }),
      "missing-key",
      "rubber[2].axis",
    ],
    [
      "a ball that resists turns",
      { rubber: [{ part: "arm-ball", radial_n_per_mm: 6000, torsional_nm_per_deg: 5 }] },
      "key-not-used-here",
      "rubber[0].torsional_nm_per_deg",
    ],
    [
      "no resistance against a turn",
      withEntry(1, { conical_nm_per_deg: 0 }),
      "out-of-range",
      "rubber[1].conical_nm_per_deg",
    ],
    ["a rate of nothing", withEntry(1, { radial_n_per_mm: 0 }), "out-of-range", "rubber[1].radial_n_per_mm"],
    ["a rate in N/m", withEntry(1, { radial_n_per_mm: 4_000_000 }), "unit-mixed", "rubber[1].radial_n_per_mm"],
    ["a rigid end torn", { faults: [{ part: "toe-link", end: "to", factor: 0.5 }] }, "nothing-soft", "faults[0].part"],
    [
      "play of less than nothing",
      { faults: [{ part: "arm-ball", kind: "play", total_mm: -1 }] },
      "out-of-range",
      "faults[0].total_mm",
    ],
    ["play without its width", { faults: [{ part: "arm-ball", kind: "play" }] }, "missing-key", "faults[0].total_mm"],
    [
      "play with a factor",
      { faults: [{ part: "arm-ball", kind: "play", total_mm: 1, factor: 2 }] },
      "key-not-used-here",
      "faults[0].factor",
    ],
    [
      "play at one end",
      { faults: [{ part: "toe-link", kind: "play", total_mm: 1, end: "to" }] },
      "key-not-used-here",
      "faults[0].end",
    ],
    ["torn by nothing said", { faults: [{ part: "arm-rear" }] }, "missing-key", "faults[0].factor"],
    [
      "a range of one end",
      { faults: [{ part: "arm-rear", factor: 0.3, factor_low: 0.2 }] },
      "missing-key",
      "faults[0].factor_high",
    ],
    [
      "a range beside its middle",
      { faults: [{ part: "arm-rear", factor: 0.3, factor_low: 0.4, factor_high: 0.5 }] },
      "not-consistent",
      "faults[0].factor_low",
    ],
    ["one end twice", { rubber: [...rubber, rubber[1]] }, "repeated-name", "rubber[4]"],
    ["no spring", { layout: springless }, "missing-key", "layout.spring"],
    ["a rise of nothing held", { hold: "wheel_load" }, "key-not-used-here", "loads[0].contact_rise_mm"],
  ])("refuses %s, and says where", (_what, change, code, path) => {
    const answer = askDoor("linkage.bodies-compliance", JSON.parse(JSON.stringify({ ...request, ...change })));
    if (!("findings" in answer)) throw new Error("was answered");
    expect(answer.findings.map((f) => ({ code: f.code, path: f.path }))).toEqual([{ code, path }]);
  });
});
