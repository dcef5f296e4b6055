import { describe, expect, it } from "vitest";
import { rankLooks, signOfLook, usualStopRule } from "./look.ts";
import { computeSuspects, type Observation, type SuspectModel } from "./suspects.ts";

const certain = { leak: 0, strength: 1 };

/** Two causes equally likely behind a noise, nothing else possible, never both: priors so small that it does not count. */
const noise: SuspectModel = {
  causes: [
    { id: "link", prior: 1e-9 },
    { id: "bush", prior: 1e-9 },
  ],
  signs: [
    {
      id: "noise",
      leak: certain.leak,
      strengths: new Map([
        ["link", 1],
        ["bush", 1],
      ]),
    },
    signOfLook("link-moves", 1, new Map([["link", 1]])),
    signOfLook("bush-moves", 0.8, new Map([["bush", 0.9]])),
  ],
};
const heard: Observation = { complaint: ["noise"], present: [], absent: [] };

describe("what a look shows", () => {
  it.each([
    [0.9, 0.95],
    [0.5, 0.5],
    [1, 0.7],
    [0.2, 0.9],
  ])("sensitivity %d and specificity %d come back from strength and leak", (sensitivity, specificity) => {
    const { leak, strengths } = signOfLook("s", specificity, new Map([["c", sensitivity]]));
    expect(1 - leak).toBeCloseTo(specificity, 15);
    expect(1 - (1 - leak) * (1 - (strengths.get("c") ?? 0))).toBeCloseTo(sensitivity, 15);
  });

  it("a sensitivity below one less the specificity says nothing of the cause", () => {
    expect(signOfLook("s", 0.4, new Map([["c", 0.3]])).strengths.get("c")).toBe(0);
    expect(signOfLook("s", 0, new Map([["c", 0.3]])).strengths.get("c")).toBe(0);
  });
});

describe("the next look", () => {
  const looks = [
    { id: "bar", minutes: 12, safety: false, signs: ["bush-moves"] },
    { id: "shake", minutes: 3, safety: false, signs: ["link-moves"] },
  ];

  it("by hand: a look that cannot err settles always, one that can settles only when its answer is sure enough", () => {
    const next = rankLooks(noise, heard, looks, { settledAt: 0.81, leastGain: 0.01 });
    expect(next.lead).toBeCloseTo(0.5, 8);
    expect(next.looks.map((l) => l.id)).toEqual(["shake", "bar"]);
    expect(next.looks[0]).toMatchObject({ settlesPerMinute: expect.closeTo(1 / 3, 8), gain: expect.closeTo(0.5, 8) });
    // The bar: shows with 0.55, the bush is then 0.45/0.55 = 0.818; else the link is 0.4/0.45 = 0.889.
    expect(next.looks[1]?.settles).toBeCloseTo(1, 8);
    const strict = rankLooks(noise, heard, looks, { settledAt: 0.85, leastGain: 0.01 });
    expect(strict.looks.find((l) => l.id === "bar")?.settles).toBeCloseTo(0.45, 8);
    expect(strict.looks.find((l) => l.id === "bar")?.gain).toBeCloseTo(0.45 + 0.4 - 0.5, 8);
  });

  it("chances of the outcomes and figures after them are those of asking again", () => {
    const both = { id: "both", minutes: 10, safety: false, signs: ["link-moves", "bush-moves"] };
    const rule = { settledAt: 0.95, leastGain: 0.01 };
    const [ranked] = rankLooks(noise, heard, [both], rule).looks;
    let settles = 0;
    let total = 0;
    const before = computeSuspects(noise, heard);
    for (const shown of [[], ["link-moves"], ["bush-moves"], ["link-moves", "bush-moves"]]) {
      const after = computeSuspects(noise, {
        ...heard,
        present: shown,
        absent: both.signs.filter((s) => !shown.includes(s)),
      });
      if (after.kind !== "answered" || before.kind !== "answered") continue;
      const chance = after.observationProbability / before.observationProbability;
      total += chance;
      if ((after.suspects[0]?.cures ?? 0) >= rule.settledAt) settles += chance;
    }
    expect(total).toBeCloseTo(1, 12);
    expect(ranked?.settles).toBeCloseTo(settles, 12);
  });

  it("safety looks come first whatever they tell, and looking does not stop before them", () => {
    const bolts = { id: "bolts", minutes: 60, safety: true, signs: ["bolt-loose"] };
    const model = { ...noise, signs: [...noise.signs, signOfLook("bolt-loose", 1, new Map())] };
    const settled: Observation = { ...heard, present: ["link-moves"] };
    const next = rankLooks(model, settled, [...looks, bolts]);
    expect(next.looks[0]?.id).toBe("bolts");
    expect(next).toMatchObject({ stop: null, lead: expect.closeTo(1, 6) });
    expect(rankLooks(model, { ...settled, absent: ["bolt-loose"] }, [...looks, bolts]).stop).toBe("settled");
  });

  it("stops where it is settled, where nothing is left, where nothing would help", () => {
    expect(rankLooks(noise, heard, looks).stop).toBeNull();
    expect(rankLooks(noise, heard, []).stop).toBe("nothing-left");
    const useless = { ...noise, signs: [...noise.signs, signOfLook("weather", 0.5, new Map([["link", 0.5]]))] };
    expect(rankLooks(useless, heard, [{ id: "sky", minutes: 1, safety: false, signs: ["weather"] }]).stop).toBe(
      "no-gain",
    );
    expect(usualStopRule.settledAt).toBeLessThan(1);
  });

  it("a look whose signs are all known is done", () => {
    const next = rankLooks(noise, { ...heard, absent: ["bush-moves"] }, looks);
    expect(next.looks.map((l) => l.id)).toEqual(["shake"]);
  });
});

describe("suspects by hand", () => {
  it("one symptom, two causes and a leak", () => {
    const model: SuspectModel = {
      causes: [
        { id: "a", prior: 0.2 },
        { id: "b", prior: 0.1 },
      ],
      signs: [
        {
          id: "y",
          leak: 0.05,
          strengths: new Map([
            ["a", 0.5],
            ["b", 0.8],
          ]),
        },
      ],
    };
    const answer = computeSuspects(model, { complaint: ["y"], present: [], absent: [] });
    if (answer.kind !== "answered") throw new Error("impossible");
    // Acting: a 0.1, b 0.08, leak 0.05; P(y) = 1 - 0.9 * 0.92 * 0.95 = 0.2134.
    expect(answer.observationProbability).toBeCloseTo(0.2134, 12);
    expect(answer.suspects.map((s) => s.cause)).toEqual(["a", "b"]);
    expect(answer.suspects[0]?.cures).toBeCloseTo((0.1 * 0.92 * 0.95) / 0.2134, 12);
    expect(answer.suspects[1]?.cures).toBeCloseTo((0.08 * 0.9 * 0.95) / 0.2134, 12);
    expect(answer.somethingElse).toBeCloseTo((0.05 * 0.9 * 0.92) / 0.2134, 12);
    // There: a with the symptom 0.2 * (1 - 0.5 * 0.92 * 0.95).
    expect(answer.suspects[0]?.there).toBeCloseTo((0.2 * (1 - 0.5 * 0.92 * 0.95)) / 0.2134, 12);
    expect(answer.suspects.reduce((sum, s) => sum + s.cures, answer.somethingElse + answer.twoAtOnce)).toBeCloseTo(
      1,
      12,
    );
  });

  it("refuses what cannot be asked", () => {
    expect(() => computeSuspects(noise, { complaint: [], present: [], absent: [] })).toThrow("at least one");
    expect(() => computeSuspects(noise, { ...heard, absent: ["noise"] })).toThrow("noise");
    expect(() => computeSuspects(noise, { ...heard, present: ["whistle"] })).toThrow("whistle");
  });

  it("says where nothing in the model can bring it about", () => {
    const model = {
      causes: [{ id: "a", prior: 0.5 }],
      signs: [{ id: "y", leak: 0, strengths: new Map<string, number>() }],
    };
    expect(computeSuspects(model, { complaint: ["y"], present: [], absent: [] })).toEqual({ kind: "impossible" });
  });
});
