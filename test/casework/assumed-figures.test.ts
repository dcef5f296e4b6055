import { describe, expect, it } from "vitest";
import { computeFaultEffect, type FaultEffect } from "#casework";
import { parseSilhouette, type SilhouetteSheet } from "#contract";
import { drawFamilySheet, drawUnderside, layoutDoubt, leftOutOrigin, type Scene } from "#drawing";
import { printFaultSheet } from "#report";
import type { Family } from "#vehicle";
import { flatten, readPdfWords } from "../e2e/pdf-words.ts";

const familyOf = (sheet: SilhouetteSheet): Family => {
  const parsed = parseSilhouette(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const effectOf = (family: Family): FaultEffect => {
  const answer = computeFaultEffect(family, {
    corner: "rear-left",
    position: "rear-left/trailing-link/inner-bush",
    fault: { kind: "torn", grade: 3 },
    condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
  });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.effect;
};
const inputOf = ({ headline }: FaultEffect, label: string): string =>
  headline.inputs.find((input) => input.label === label)?.value ?? "";
const textsOf = ({ marks }: Scene): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
const sheetOf = async (family: Family): Promise<string> =>
  flatten(readPdfWords(Buffer.from(await printFaultSheet({ family, effect: effectOf(family), date: "1 May 2026" }))));

const layouts = { front_layout: "strut", rear_layout: "five-link" } as const;
const bare = familyOf(layouts);
/** The same car, every figure of it typed. */
const typed = familyOf({
  ...layouts,
  wheelbase_mm: 2700,
  front_track_mm: 1550,
  rear_track_mm: 1550,
  tyre_size: "205/55 R16",
  kerb_mass_kg: 1450,
  front_weight_share: 0.56,
  driven_axle: "front",
  front_lowered_mm: 0,
  rear_lowered_mm: 0,
});

describe("what nobody has entered of a car begun from its silhouettes", () => {
  it("stands in the inputs of every figure as assumed, with where it comes from", () => {
    const effect = effectOf(bare);
    expect(inputOf(effect, "Wheel load standing")).toBe(
      `3128 N; kerb mass, weight on the front assumed, ${leftOutOrigin}`,
    );
    expect(inputOf(effect, "Hard points")).toContain(
      `wheelbase, track, tyre size, height as built assumed, ${leftOutOrigin}`,
    );
    for (const label of ["Spring rate", "Set at ride height"])
      expect(inputOf(effect, label)).toMatch(/; assumed, from the template$/);
    for (const { label, known } of effect.parts) expect(known, label).toMatch(/from the template/);
  });

  it("is said of an axle whose layout nobody has told, before how sure its figures are", () => {
    expect(effectOf(bare).howSure).not.toContain("Nobody has said");
    const untold = familyOf({ front_layout: "strut" });
    expect(effectOf(untold).howSure).toMatch(/^Nobody has said what the rear axle looks like: its layout is assumed/);
    expect(layoutDoubt(untold, ["front"])).toBe("");
    expect(layoutDoubt(familyOf({}), ["front", "rear"])).toMatch(/^Nobody has said what either axle looks like/);
  });

  it("is told from the same figures typed, which change nothing else", () => {
    const [one, other] = [effectOf(bare), effectOf(typed)];
    expect(inputOf(other, "Wheel load standing")).toBe("3128 N");
    expect(inputOf(other, "Hard points")).toMatch(/; from the template, scaled$/);
    expect(other.headline.value).toBe(one.headline.value);
    expect(other.sentence).toBe(one.sentence);
  });

  it("is called assumed on the printed sheet, figure by figure", async () => {
    expect(await sheetOf(bare)).toContain(
      flatten(
        `Wheelbase 2700 mm (assumed); track 1550 mm front (assumed), 1550 mm rear (assumed); tyres 205/55 R16 (assumed); 1450 kg (assumed); 56 % on the front (assumed); height as built front and rear (assumed). Assumed: ${leftOutOrigin}.`,
      ),
    );
    const half = familyOf({ front_layout: "strut", wheelbase_mm: 2850, rear_track_mm: 1560, kerb_mass_kg: 1610 });
    const said = await sheetOf(half);
    expect(said).toContain(
      flatten("Wheelbase 2850 mm; rear layout five-link (assumed); track 1550 mm front (assumed), 1560 mm rear;"),
    );
    expect(said).toContain("1610 kg;");
    expect(await sheetOf(typed)).not.toContain("(assumed)");
  });

  it("is called assumed on the drawings", () => {
    const room = { width: 900, height: 800 };
    const untold = textsOf(drawUnderside(familyOf({ front_layout: "strut" }), { ...room, states: null }));
    expect(untold.some((text) => text.includes("rear layout assumed"))).toBe(true);
    for (const scene of [
      drawUnderside(bare, { ...room, states: null }),
      drawFamilySheet(bare, { ...room, selected: null }),
    ]) {
      const said = textsOf(scene);
      expect(said.filter((text) => text === "1550 (assumed)")).toHaveLength(2);
      expect(said.some((text) => text.includes("wheelbase 2700 (assumed)"))).toBe(true);
    }
    expect(textsOf(drawUnderside(typed, { ...room, states: null })).some((text) => text.includes("assumed"))).toBe(
      false,
    );
  });
});
