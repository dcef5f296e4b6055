import { describe, expect, it } from "vitest";
import { parseFamily } from "#contract";
import { assembleCorner, positionsOf } from "#vehicle";
import { demoFamilies } from "./demo-families.ts";

describe("the demo families", () => {
  it("are all read without a finding and say that they are invented", () => {
    for (const family of demoFamilies(parseFamily)) {
      expect(family.invented).toBe(true);
      expect(new Set(positionsOf(family).map((position) => position.id)).size).toBe(positionsOf(family).length);
      expect(assembleCorner(family, "front-right").wheel.centre[1]).toBeLessThan(0);
    }
  });
});
