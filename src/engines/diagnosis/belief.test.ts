import { describe, expect, it } from "vitest";
import { chanceOf, computeFamilyPrior, guess, shiftOdds, teach, teachShares, uncertaintyOf } from "./belief.ts";
import { seedModel } from "./seed-model.ts";
import { computeSuspects } from "./suspects.ts";

describe("what outcomes teach", () => {
  it("a guess of 0.3 worth 20 cases, 8 of 10 confirmed: 14 of 30", () => {
    const taught = teach(guess(0.3, 20), 8, 2);
    expect(chanceOf(taught)).toBeCloseTo(14 / 30, 15);
    expect(uncertaintyOf(taught)).toBeCloseTo(Math.sqrt((14 * 16) / (900 * 31)), 15);
  });

  it("odds times a factor", () => {
    expect(shiftOdds(0.5, 3)).toBe(0.75);
    expect(shiftOdds(0.1, 1)).toBeCloseTo(0.1, 15);
    expect(shiftOdds(0.2, 0)).toBe(0);
    expect(shiftOdds(1, 5)).toBe(1);
    expect(shiftOdds(1, 0)).toBe(1);
  });

  it("a family's known fault shifts a prior, its outcomes teach it", () => {
    // 0.1 with odds times 4: 0.4/1.3 = 0.3077, worth 20 cases; 3 confirmed, 1 denied: 9.1538/24.
    expect(computeFamilyPrior(0.1, [{ priorFactor: 4, confirmed: 3, denied: 1 }])).toBeCloseTo(
      (20 * (0.4 / 1.3) + 3) / 24,
      12,
    );
    expect(computeFamilyPrior(0.1, [])).toBeCloseTo(0.1, 15);
  });

  it("shares of a symptom after closed cases add up to one", () => {
    const taught = teachShares(
      new Map([
        ["a", 0.5],
        ["b", 0.3],
        ["rest", 0.2],
      ]),
      new Map([
        ["a", 1],
        ["b", 9],
      ]),
    );
    expect([...taught.values()]).toEqual([11 / 30, 15 / 30, 4 / 30]);
  });
});

describe("a model from stated shares", () => {
  const clunk = {
    symptom: "clunk",
    shares: new Map([
      ["link", 0.4],
      ["bush", 0.35],
      ["mount", 0.15],
    ]),
  };
  const pull = {
    symptom: "pull",
    shares: new Map([
      ["bush", 0.6],
      ["tyre", 0.4],
    ]),
  };
  const model = seedModel([clunk, pull]);

  it("gives the shares back as chances that one cure would do, in proportion", () => {
    for (const { symptom, shares } of [clunk, pull]) {
      const answer = computeSuspects(model, { complaint: [symptom], present: [], absent: [] });
      if (answer.kind !== "answered") throw new Error("impossible");
      const cures = new Map(answer.suspects.map((s) => [s.cause, s.cures]));
      const first = [...shares.keys()][0] as string;
      for (const [cause, share] of shares)
        expect((cures.get(cause) ?? 0) / (cures.get(first) ?? 0)).toBeCloseTo(share / (shares.get(first) ?? 1), 10);
    }
    const answer = computeSuspects(model, { complaint: ["clunk"], present: [], absent: [] });
    if (answer.kind !== "answered") throw new Error("impossible");
    const link = answer.suspects.find((s) => s.cause === "link");
    expect(answer.somethingElse / (link?.cures ?? 0)).toBeCloseTo(0.1 / 0.4, 10);
    expect(answer.twoAtOnce).toBeGreaterThan(0);
  });

  it("one prior for each cause; every strength is a probability", () => {
    expect(model.causes.map((c) => c.id)).toEqual(["link", "bush", "mount", "tyre"]);
    for (const sign of model.signs) for (const q of sign.strengths.values()) expect(q).toBeGreaterThan(0);
    for (const sign of model.signs) for (const q of sign.strengths.values()) expect(q).toBeLessThanOrEqual(0.8 + 1e-12);
  });

  it("both symptoms together point at the cause they share", () => {
    const answer = computeSuspects(model, { complaint: ["clunk", "pull"], present: [], absent: [] });
    expect(answer.kind === "answered" && answer.suspects[0]?.cause).toBe("bush");
  });
});
