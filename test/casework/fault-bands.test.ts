import { describe, expect, it } from "vitest";
import { type Condition, computeFaultEffect, type FaultEffect, formatBand, type RubberFault } from "#casework";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { type Corner, type Family, familyFromSilhouette, positionsOf } from "#vehicle";

const readFamily = (id: string): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};

const scaledFamily = (frontLayout: string, rearLayout: string): Family => {
  const made = familyFromSilhouette({ frontLayout, rearLayout } as Parameters<typeof familyFromSilhouette>[0]);
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  return made.family;
};

/** Effects of a fault at joints of the left side, each `stride`th of them. */
const effectsOf = (family: Family, fault: RubberFault, condition: Condition, stride: number): readonly FaultEffect[] =>
  positionsOf(family)
    .filter(({ joint, side }) => joint !== null && side === "left")
    .filter((_, i) => i % stride === 0)
    .flatMap(({ id, axle }) => {
      const answer = computeFaultEffect(family, { corner: `${axle}-left`, position: id, fault, condition });
      return "effect" in answer ? [answer.effect] : [];
    });

const condition: Condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };
const torn: RubberFault = { kind: "torn", grade: 3 };
const families: readonly (readonly [string, Family])[] = [
  ["ouzel-saloon", readFamily("ouzel-saloon")],
  ["five-link silhouette", scaledFamily("five-link", "five-link")],
  ["strut and trailing-arm silhouette", scaledFamily("strut", "trailing-arm")],
];

const expectBeyondNought = ({ figures, question }: FaultEffect): number => {
  const printed = figures.filter(({ signSure, band }) => signSure && band !== null);
  for (const { band, value, range, key } of printed) {
    const [low, high] = band as [number, number];
    const which = `${question.position} ${question.fault.kind} ${key}`;
    expect(low * high, which).toBeGreaterThan(0);
    expect(value, which).toBeGreaterThan(low);
    expect(value, which).toBeLessThan(high);
    expect(low, which).toBeLessThanOrEqual(range?.[0] ?? value);
    expect(high, which).toBeGreaterThanOrEqual(range?.[1] ?? value);
  }
  return printed.length;
};

describe.each(families)("the band of a figure of a fault: %s", (_, family) => {
  it("of a torn bush never reaches nought where it is printed, and is what curve and words say", () => {
    let printed = 0;
    for (const effect of effectsOf(family, torn, condition, 2)) {
      printed += expectBeyondNought(effect);
      const atRest = effect.rises.findIndex((rise) => Math.abs(rise) < 1e-9);
      const line = effect.curves.find(({ quantity }) => quantity === "toe-change")?.lines[0];
      const { band } = effect.headline;
      expect(line?.low[atRest]).toBeCloseTo(band?.[0] ?? Number.NaN, 9);
      expect(line?.high[atRest]).toBeCloseTo(band?.[1] ?? Number.NaN, 9);
      if (effect.headline.signSure && effect.headline.value > 0)
        expect(effect.howSure).toContain(formatBand(effect.headline));
      expect(effect.howSure.includes("no figure is given")).toBe(!effect.headline.signSure);
    }
    expect(printed).toBeGreaterThan(4);
  });

  it("of a firmer or a loose one never does either", () => {
    const faults: readonly RubberFault[] = [
      { kind: "firmer", factor: 2 },
      { kind: "loose", play: 0.001 },
    ];
    const effects = faults.flatMap((fault) => effectsOf(family, fault, condition, 4));
    expect(effects.reduce((sum, effect) => sum + expectBeyondNought(effect), 0)).toBeGreaterThan(4);
  });
});

describe("the readings that would settle a sign", () => {
  it("are all said, by the way they are taken", () => {
    const settles = families
      .flatMap(([, family]) => effectsOf(family, torn, condition, 3))
      .flatMap(({ figures }) => figures.flatMap(({ settle }) => (settle?.includes("settle it takes") ? [settle] : [])));
    expect(settles.length).toBeGreaterThan(0);
    for (const settle of settles) {
      const count = /takes (one|\d+) reading/.exec(settle)?.[1];
      const places = settle.match(/\b(inner|outer|strut top|strut's lower line|trailing arm's bush)\b/g) ?? [];
      expect(places.length, settle).toBe(count === "one" ? 1 : Number(count));
    }
  });
});

describe("a loose joint near the end of its play", () => {
  it("is not known: no figure, what would settle it in its place, and a curve no wider than its two sides", () => {
    const effects = families.flatMap(([, family]) =>
      effectsOf(family, { kind: "loose", play: 0.002 }, { ...condition, braking: 0 }, 3),
    );
    const open = effects.filter(({ figures }) =>
      figures.some(({ settle }) => settle?.startsWith("Whether the loose joint") === true),
    );
    expect(open.length).toBeGreaterThan(0);
    for (const { headline } of open) expect(headline.signSure).toBe(false);
    for (const { curves, question } of effects)
      for (const { lines, quantity } of curves)
        for (const { low, high } of lines)
          for (const [i, bound] of low.entries())
            expect((high[i] as number) - bound, `${question.position} ${quantity}`).toBeLessThan(20);
  });
});

describe("a force beyond what the tyre could pass on", () => {
  it("is said, and a usual one is not", () => {
    const family = readFamily("ouzel-saloon");
    const asked = (more: Partial<Condition>) => {
      const corner: Corner = "rear-left";
      const answer = computeFaultEffect(family, {
        corner,
        position: `${corner}/trailing-link/inner-bush`,
        fault: { kind: "torn", grade: 3 },
        condition: { ...condition, braking: 0, ...more },
      });
      if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
      return answer.effect.beyondTyre;
    };
    expect(asked({ braking: 2000 })).toBeNull();
    expect(asked({ braking: 8000 })).toContain("A tyre cannot pass on 8.0 kN here");
    // A bend loads the outer wheel: toward the left it is the right one.
    expect(asked({ lateral: -5500 })).toBeNull();
    expect(asked({ lateral: 5500 })).not.toBeNull();
    expect(asked({ braking: 3000, lateral: 3000 })).not.toBeNull();
  });
});
