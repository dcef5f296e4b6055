import { describe, expect, it } from "vitest";
import { computeFaultEffect } from "#casework";
import { parseFamily } from "#contract";
import { demoFamilies } from "#demo";
import type { Family } from "#vehicle";

const ouzel = demoFamilies(parseFamily).find((f) => f.id === "ouzel-saloon") as Family;

const effectAt = (corner: "front-left" | "rear-left" | "rear-right", position: string, rack: number) => {
  const answer = computeFaultEffect(ouzel, {
    corner,
    position: `${corner}/${position}`,
    fault: { kind: "torn", grade: 3 },
    condition: { contactRise: 0, rack, braking: 2000, lateral: 0, drive: 0 },
  });
  if (!("effect" in answer)) throw new Error(JSON.stringify(answer.findings));
  return answer.effect;
};

describe("a corner with one bush torn", () => {
  it("is balanced at every rack position, however far its soft links swing in one step", () => {
    for (const mm of [-76, -57, 40, 49, 57, 66, 72, 80])
      expect(Number.isFinite(effectAt("front-left", "lower-arm/rear-bush", mm / 1000).headline.value)).toBe(true);
  });

  it("turns the thrust line to the side alignment.axle gives it: half the right wheel's toe less half the left's", () => {
    const links = ouzel.rear.links.map((l) => l.name);
    const link = links.find((name) => /trailing|lower|spring/.test(name)) ?? links[0];
    for (const corner of ["rear-left", "rear-right"] as const) {
      const effect = effectAt(corner, `${link}/inner-bush`, 0);
      const thrust = effect.figures.find((f) => f.key === "thrust-change");
      const own = corner === "rear-right" ? 0.5 : -0.5;
      expect(thrust?.value).toBeCloseTo(own * effect.headline.value, 12);
    }
  });
});
