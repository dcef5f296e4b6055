import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { metresFromMm, newtonsPerMetreFromPerMm, radiansFromDegrees } from "#quantity";
import { exactDegrees, exactMm, exactPerMm } from "./exact-figure.ts";

const seeded = { seed: 4711, numRuns: 3000 };

describe("figures written back in the unit of the file", () => {
  it("read back as the same double whatever double stood in the file", () => {
    const mm = fc.double({ min: -10_000, max: 10_000, noNaN: true });
    fc.assert(
      fc.property(mm, (figure) => metresFromMm(exactMm(metresFromMm(figure))) === metresFromMm(figure)),
      seeded,
    );
    const degrees = fc.double({ min: -15, max: 15, noNaN: true });
    fc.assert(
      fc.property(
        degrees,
        (figure) => radiansFromDegrees(exactDegrees(radiansFromDegrees(figure))) === radiansFromDegrees(figure),
      ),
      seeded,
    );
    const rate = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(
        rate,
        (figure) =>
          newtonsPerMetreFromPerMm(exactPerMm(newtonsPerMetreFromPerMm(figure))) === newtonsPerMetreFromPerMm(figure),
      ),
      seeded,
    );
  });

  it("are the short figures a person typed", () => {
    for (const figure of [0.1, 317, 190.5, -2795, 547.9, 1e-3]) expect(exactMm(metresFromMm(figure))).toBe(figure);
    for (const figure of [-0.75, 0.08, -1.25]) expect(exactDegrees(radiansFromDegrees(figure))).toBe(figure);
  });

  it("are the nearest, one unit in the last place away, where no figure in the file's unit reads back exactly", () => {
    const lengths = fc.double({ min: 0.001, max: 5, noNaN: true });
    fc.assert(
      fc.property(lengths, (metres) => Math.abs(metresFromMm(exactMm(metres)) - metres) <= 2 * Number.EPSILON * metres),
      seeded,
    );
  });
});
