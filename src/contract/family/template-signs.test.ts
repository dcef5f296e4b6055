import { describe, expect, it } from "vitest";
import { computeFaultEffect } from "#casework";
import type { Corner } from "#vehicle";
import { parseSilhouette } from "./index.ts";

/** The bush the trade first suspects on each layout, and which way it lets the wheel turn under braking. */
const suspects = [
  ["five-link", "five-link", "front-left", "front-left/lower-rear-link/inner-bush", "out"],
  ["double-wishbone", "five-link", "front-left", "front-left/lower-arm/rear-bush", "in"],
  ["strut", "five-link", "front-left", "front-left/lower-arm/front-bush", "out"],
  ["strut", "five-link", "rear-left", "rear-left/trailing-link/inner-bush", "in"],
  ["strut", "trailing-arm", "rear-left", "rear-left/trailing-arm/front-bush", "out"],
] as const;

describe("a car nobody has measured", () => {
  it.each(suspects)(
    "of %s and %s: at the %s, %s torn turns the wheel %s under braking, for sure",
    (front_layout, rear_layout, corner: Corner, position, way) => {
      const parsed = parseSilhouette({ front_layout, rear_layout });
      if ("findings" in parsed) throw new Error("the silhouette was refused");
      const condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };
      const answer = computeFaultEffect(parsed.family, {
        corner,
        position,
        fault: { kind: "torn", grade: 3 },
        condition,
      });
      if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
      const { headline } = answer.effect;
      expect(headline.rung).toBe("scaled");
      expect(headline.value > 0 ? "in" : "out").toBe(way);
      expect(headline.signSure).toBe(true);
      expect(headline.u).toBeGreaterThan(0.2 * Math.abs(headline.value));
    },
  );
});
