import { describe, expect, it } from "vitest";
import type { StoredLook, SymptomEntry } from "#casework";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { findSuspects } from "../../src/casework/suspects/visit-suspects.ts";
import { look, ouzel, reading, record, solver, work } from "./made-visit.ts";

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const tyre = (corner: string, inner: number, middle: number, outer: number) =>
  Object.entries({ inner, middle, outer }).map(([point, mm]) =>
    look(`${corner}/tyre/tread`, reading("tread", mm / 1000, 0.0001, point)),
  );
const target = { ...ouzel().work?.alignment.find(({ axle }) => axle === "front") };
const complaint = (symptom: string): SymptomEntry => ({
  symptom,
  side: "unknown",
  axle: "unknown",
  conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking: null },
  since: null,
});
const alignment = [
  {
    ...target,
    axle: "front",
    toe: [rad(-0.1), rad(0.1)],
    camber: [rad(-1.5), rad(-0.5)],
    hubToArch: 0.372,
    heightTolerance: 0.01,
    owner: "maker",
    source: "invented",
  },
] as unknown as typeof work.alignment;
const suspectsOf = (symptom: string, looks: readonly StoredLook[]) =>
  findSuspects([complaint(symptom)], appraiseVisit(record(looks, { work: { ...work, alignment } }), solver).findings)
    .suspects;
const suspect = (all: ReturnType<typeof suspectsOf>, cause: string) => {
  const found = all.find((s) => s.cause === cause);
  if (!found) throw new Error(`no ${cause}`);
  return found;
};
const innerWorn = tyre("front-left", 2.4, 4.6, 5.2);

describe("how a tyre has worn", () => {
  it("is named in what was found", () => {
    const named = (...mm: readonly [number, number, number]) =>
      appraiseVisit(record(tyre("front-left", ...mm)), solver).findings.find((f) => f.wear !== undefined)?.found;
    expect(named(2.4, 4.6, 5.2)).toContain("inner-edge wear");
    expect(named(5.2, 4.6, 2.4)).toContain("outer-edge wear");
    expect(named(5.4, 3, 5.2)).toContain("centre wear");
    expect(named(3, 5.6, 3.2)).toContain("both-shoulder wear");
    expect(named(5, 5.2, 5.1)).toBeUndefined();
  });

  it("at the inner edge speaks for toe and camber of that axle, and says at which tyre", () => {
    const before = suspectsOf("wanders-needs-steady-correction", []);
    const worn = suspectsOf("wanders-needs-steady-correction", innerWorn);
    const toe = suspect(worn, "front-toe-out-of-setting");
    expect(toe.there).toBeGreaterThan(suspect(before, "front-toe-out-of-setting").there);
    expect(toe.speaksFor).toEqual(["Tyre, front left: inner-edge wear"]);
    expect(suspect(worn, "rear-toe-thrust-angle").speaksFor).toEqual([]);
    expect(toe.moves.some(({ words, times }) => words.includes("inner-edge wear") && times > 1)).toBe(true);
  });

  it("never speaks against camber by making the tyre itself the cause", () => {
    const before = suspectsOf("pulls-under-braking", []);
    const worn = suspectsOf("pulls-under-braking", innerWorn);
    const camber = "front-camber-or-cross-camber";
    expect(suspect(worn, camber).cures).toBeGreaterThan(suspect(before, camber).cures);
    expect(suspect(worn, "tyre-mismatch").speaksFor).toEqual([]);
  });

  it("does not speak for a toe that was read on the other side: toe in wears the outer edge", () => {
    const toe = (degrees: number) =>
      ["front-left", "front-right"].map((corner) =>
        look(`${corner}/alignment`, reading("toe", rad(degrees), rad(0.02))),
      );
    const wear = (degrees: number) =>
      suspect(
        suspectsOf("wanders-needs-steady-correction", [...innerWorn, ...toe(degrees)]),
        "front-toe-out-of-setting",
      ).speaksFor.filter((words) => words.includes("inner-edge"));
    expect(wear(-0.4)).toHaveLength(1);
    expect(wear(0.4)).toHaveLength(0);
  });

  it("does not count twice where it is the complaint itself", () => {
    const worn = suspectsOf("front-tyres-worn-on-inner-edge", innerWorn);
    expect(suspect(worn, "front-toe-out-of-setting").speaksFor).toEqual([]);
  });
});
