import { describe, expect, it } from "vitest";
import { type Condition, computeFaultEffect, type FaultEffect, type HardnessChange, type RubberFault } from "#casework";
import { askDoor, formatComplianceQuestion, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { normalFrom, seededRandom } from "#numeric";
import type { Family } from "#vehicle";

const PLACE = "rear-left/trailing-link/inner-bush";
const condition: Condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };

/** The Ouzel, its trailing link's front bush with a hardness on file or none. */
const ouzelWith = (hardness: number | null): Family => {
  const sheet = structuredClone(demoFamilySheets["ouzel-saloon"]) as {
    rear: { links: { name: string; inner_joint: Record<string, unknown> }[] };
  };
  const joint = sheet.rear.links.find(({ name }) => name === "trailing-link")?.inner_joint;
  if (joint === undefined) throw new Error("no trailing link");
  if (hardness === null) delete joint.hardness_shore_a;
  else joint.hardness_shore_a = hardness;
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const ouzel = ouzelWith(null);

const ask = (family: Family, fault: RubberFault) =>
  computeFaultEffect(family, { corner: "rear-left", position: PLACE, fault, condition });
const effectOf = (family: Family, fault: RubberFault): FaultEffect => {
  const answer = ask(family, fault);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.effect;
};
const harder = (from: number | null, to: number | null): RubberFault => ({ kind: "firmer", hardness: { from, to } });

/** Standard deviation of one reading, Shore A: two readings of one part differ by 5 with 95 %. */
const READING = 5 / (1.96 * Math.SQRT2);
const DRAWS = 1000;

const modulusOf = (hardness: number): number => {
  const bush = { inner_radius_mm: 10, outer_radius_mm: 20, length_mm: 40, hardness_shore_a: hardness };
  const answer = askDoor("rubber.rate", bush);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return (answer.output as { shear_modulus_n_per_mm2: number }).shear_modulus_n_per_mm2;
};

const toeAtTheDoor = (factor: number | null): number => {
  const question = { corner: "rear-left", position: PLACE, fault: harder(55, 65), condition } as const;
  const answer = askDoor("linkage.compliance", formatComplianceQuestion(ouzel, question, factor));
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  const [state] = (answer.output as { states: { toe_deg: number }[] }).states;
  return state?.toe_deg ?? Number.NaN;
};

describe("a firmer part told by its hardness", () => {
  const effect = effectOf(ouzel, harder(55, 65));

  it("does what the doors say of the ratio of both moduli", () => {
    const factor = modulusOf(65) / modulusOf(55);
    expect(effect.firmness?.factor).toBeCloseTo(factor, 12);
    expect(effect.headline.value).toBeCloseTo(toeAtTheDoor(factor) - toeAtTheDoor(null), 8);
  });

  it("has a band over the whole range of its rate, with the effects of both ends in it", () => {
    const { low, high } = effect.firmness ?? { low: Number.NaN, high: Number.NaN };
    const ends = [low, high].map((factor) => effectOf(ouzel, { kind: "firmer", factor }).headline);
    const range = ends.map(({ value }) => value).toSorted((a, b) => a - b);
    effect.headline.range?.forEach((value, i) => {
      expect(value).toBeCloseTo(range[i] ?? Number.NaN, 9);
    });
    const bounds = ends.flatMap(({ band }) => band ?? []);
    const [least, most] = effect.headline.band ?? [];
    expect(least).toBeCloseTo(Math.min(...bounds), 9);
    expect(most).toBeCloseTo(Math.max(...bounds), 9);
    const exact = effectOf(ouzel, { kind: "firmer", factor: effect.firmness?.factor ?? Number.NaN }).headline;
    expect(effect.headline.value).toBeCloseTo(exact.value, 12);
    const width = ([from, to]: readonly [number, number]): number => to - from;
    expect(width(effect.headline.band ?? [0, 0])).toBeGreaterThan(width(exact.band ?? [0, 0]));
  });

  it("spreads its effect as drawn readings and compounds do", () => {
    const draw = normalFrom(seededRandom(11));
    const sound = toeAtTheDoor(null);
    const read = (hardness: number): number => modulusOf(hardness + READING * draw());
    const changes = Array.from({ length: DRAWS }, () => {
      const factor = (read(65) / read(55)) * Math.exp((Math.log(1.3) / 1.96) * draw());
      return toeAtTheDoor(factor) - sound;
    }).toSorted((a, b) => a - b);
    const [low, high] = [changes[0.025 * DRAWS] ?? Number.NaN, changes[0.975 * DRAWS] ?? Number.NaN];
    const [least, most] = effect.headline.range ?? [Number.NaN, Number.NaN];
    const width = most - least;
    expect(Math.abs(least - low)).toBeLessThan(0.1 * width);
    expect(Math.abs(most - high)).toBeLessThan(0.1 * width);
  });

  it("says so in words, with its figure and band, its origin and its source, and never as torn", () => {
    expect(effect.sentence).toMatch(
      /^Under 2\.0 kN of braking at this wheel the firmer bush holds the rear left wheel [\d.]+° further (in|out) than a sound one does \([\d.]+ to [\d.]+°\)\.$/,
    );
    expect(effect.howSure).toContain("55 to 65 Shore A makes 1.49 times the sound rate, 1.07 to 2.08 (95 %)");
    const inputs = effect.headline.inputs.map(({ label, value }) => `${label}: ${value}`);
    expect(inputs).toContain("Hardness, old and new: 55 and 65 Shore A; the old one as entered");
    expect(effect.headline.source).toContain("gent-hardness, hardness-scatter");
    expect(JSON.stringify({ ...effect, parts: [] })).not.toMatch(/\btorn\b/i);
  });

  it("says how far the force turns the wheel with it and with the sound one, where both are sure", () => {
    const position = "front-left/lower-arm/rear-bush";
    const answer = computeFaultEffect(ouzel, { corner: "front-left", position, fault: harder(50, 70), condition });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const { figures, headline, sentence, whatElse } = answer.effect;
    expect(sentence).toMatch(
      /This force turns it [\d.]+° out \([\d.]+ to [\d.]+°\), with the sound one [\d.]+° out\.$/,
    );
    const by = (key: string): number => figures.find((figure) => figure.key === key)?.value ?? Number.NaN;
    const shift = by("toe-shift");
    expect(by("toe-turned-faulty") - by("toe-turned-sound")).toBeCloseTo(headline.value - shift, 9);
    expect(Math.abs(by("toe-turned-faulty"))).toBeLessThan(Math.abs(by("toe-turned-sound")));
    expect(whatElse).toContain("What it does to ride and noise is not computed.");
    expect(`${sentence} ${whatElse}`).not.toMatch(/fault/);
  });

  it("is not known to be firmer by 5 points, so nothing is printed and the bench is asked for", () => {
    const { headline, sentence, howSure } = effectOf(ouzel, harder(60, 65));
    expect(headline.signSure).toBe(false);
    expect(headline.settle).toContain("Load both parts alike on the bench");
    expect(sentence).toContain("by its hardness it may be no firmer than the sound one");
    expect(howSure).toContain("the new part may be no firmer");
  });

  it("takes the old hardness from the family sheet where nobody has said it, and what was said before that", () => {
    const family = ouzelWith(58);
    expect(effectOf(family, harder(null, 70)).firmness).toMatchObject({ from: 58, to: 70 });
    expect(effectOf(family, harder(null, 70)).firmness?.origin).toContain("from the family sheet");
    expect(effectOf(family, harder(50, 70)).firmness).toMatchObject({ from: 50, origin: "as entered" });
  });

  it.each<[string, HardnessChange, readonly string[]]>([
    ["an old part nobody knows", { from: null, to: 65 }, ["hardness-not-known fault.hardness.from"]],
    [
      "nothing at all",
      { from: null, to: null },
      ["hardness-not-known fault.hardness.from", "hardness-not-known fault.hardness.to"],
    ],
    ["a softer one", { from: 65, to: 55 }, ["not-consistent fault.hardness.to"]],
    ["one as hard", { from: 60, to: 60 }, ["not-consistent fault.hardness.to"]],
    ["one beyond the relation", { from: 60, to: 96 }, ["out-of-range fault.hardness.to"]],
    ["one below it", { from: 12, to: 60 }, ["out-of-range fault.hardness.from"]],
  ])("refuses %s in words", (_, hardness, expected) => {
    const answer = ask(ouzel, { kind: "firmer", hardness });
    const findings = "findings" in answer ? answer.findings : [];
    expect(findings.map(({ code, path }) => `${code} ${path}`)).toEqual(expected);
    for (const { needed, hint } of findings) expect(`${needed}${hint}`).not.toBe("");
  });

  it("calls a softer one softer, and asks whether the two are exchanged", () => {
    const answer = ask(ouzel, harder(65, 55));
    expect(answer).toMatchObject({ findings: [{ hint: expect.stringContaining("softer, not firmer") }] });
  });
});
