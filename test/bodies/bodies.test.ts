import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type BodiesAsked, type BodiesFile, type BodiesSheet, computeBodies } from "#casework";
import { askDoor, parseBodiesFile } from "#contract";
import { drawBodies } from "#drawing";

const text = readFileSync(
  new URL("../../docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url),
  "utf8",
);
const document = JSON.parse(text) as Record<string, unknown> & { readonly layout: Record<string, unknown> };
const fileOf = (changed: unknown): BodiesFile => {
  const parsed = parseBodiesFile(JSON.stringify(changed));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.value;
};
const file = fileOf(document);
const braked = { contactRise: 0.01, rack: 0, braking: 2000, lateral: 0, drive: 0 };
const torn = { part: "arm-front", end: null };
const sheetOf = (change: Partial<BodiesAsked> = {}): BodiesSheet => {
  const answer = computeBodies({ file, torn, condition: braked, ...change });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.sheet;
};
const sheet = sheetOf();

describe("a suspension of several bodies from a file", () => {
  it("says what a torn bush does as the calculation says it, with its band", () => {
    const answer = askDoor("linkage.bodies-compliance", {
      ...document,
      hold: "contact_height",
      faults: [{ part: "arm-front", factor: 0.275 }],
      loads: [{ braking_n: 2000, contact_rise_mm: 10 }],
    });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const [state] = (answer.output as { states: { less_sound: Record<string, number> }[] }).states;
    const [toe, camber] = sheet.figures;
    expect(toe?.value).toBeCloseTo(state?.less_sound.toe_deg ?? Number.NaN, 10);
    expect(toe?.u).toBeCloseTo(state?.less_sound.toe_sd_deg ?? Number.NaN, 10);
    expect(camber?.value).toBeCloseTo(state?.less_sound.camber_deg ?? Number.NaN, 10);
    expect(sheet.sentence).toMatch(
      /^Under 2\.0 kN of braking at this wheel the wheel turns (in|out) \d\.\d+° further with the joint arm front torn\.$/,
    );
    const [low = 0, high = 0] = toe?.band ?? [];
    expect(low).toBeLessThan(Math.min(...(toe?.range ?? [])));
    expect(high).toBeGreaterThan(Math.max(...(toe?.range ?? [])));
  });

  it("draws toe and camber over travel, sound and torn, and gives the sound toe at the asked travel", () => {
    const plots = sheet.plots.map(({ figure, lines }) => [figure, lines.map(({ words }) => words)]);
    expect(plots).toEqual([
      ["toe", ["sound", "torn: arm front"]],
      ["camber", ["sound", "torn: arm front"]],
    ]);
    for (const { lines } of sheet.plots)
      for (const { rises, values, low, high } of lines) {
        expect(rises.length).toBeGreaterThan(8);
        values.forEach((value, i) => {
          expect(low[i]).toBeLessThanOrEqual(value);
          expect(high[i]).toBeGreaterThanOrEqual(value);
        });
      }
    expect(sheetOf({ torn: null }).plots.map(({ lines }) => lines.length)).toEqual([1, 1]);
  });

  it("says where play and holding are not computed, and where it binds", () => {
    expect(sheet.notComputed).toMatch(/^Play, /);
    expect(sheet.binds).toMatch(/binds/);
    expect(sheet.invented).toBe(true);
  });

  it("keeps every link as long as it is, whichever bodies it joins, but for what its rubber gives", () => {
    const rigid = fileOf({ ...document, rubber: [], members: [] });
    const placed = sheetOf({ file: rigid, torn: null, condition: { ...braked, contactRise: 0.05 } }).placed;
    expect(placed?.links).toHaveLength(3);
    for (const { name, from, to } of placed?.links ?? []) {
      const link = file.layout.links.find((one) => one.name === name);
      const [a, b] = [file.layout.points[link?.from.at ?? ""], file.layout.points[link?.to.at ?? ""]];
      if (!a || !b) throw new Error("no such point");
      const length = (p: readonly number[], q: readonly number[]) => Math.hypot(...p.map((x, i) => x - (q[i] ?? 0)));
      expect(length(from, to), name).toBeCloseTo(length(a, b), 9);
    }
  });

  it("is drawn with every link and joint, the torn one in the accent, the torn state thin beside it", () => {
    if (sheet.placed === null) throw new Error("nothing placed");
    const room = { width: 500, height: 400, eye: { turn: 35, tilt: 20 } };
    const marksOf = (part: BodiesSheet["torn"], beside: BodiesSheet["tornPlaced"]) =>
      drawBodies(sheet.placed as NonNullable<BodiesSheet["placed"]>, { ...room, beside, torn: part }).marks;
    const accents = (part: BodiesSheet["torn"]) => JSON.stringify(marksOf(part, null)).split('"accent"').length - 1;
    expect([accents(null), accents(torn)]).toEqual([0, 1]);
    expect(marksOf(null, sheet.tornPlaced).length).toBeGreaterThan(marksOf(null, null).length);
  });

  it("is refused with everything that is wrong with its file, and where nothing carries the wheel", () => {
    const codes = (changed: unknown) => {
      const parsed = parseBodiesFile(JSON.stringify(changed));
      return "findings" in parsed ? parsed.findings.map(({ code, path }) => `${code} ${path}`) : [];
    };
    expect(codes({ ...document, spring_n_per_m: 70_000, loads: [] })).toEqual(
      expect.arrayContaining([expect.stringContaining("spring_n_per_m"), "unknown-key loads"]),
    );
    const bare = { ...document.layout, links: (document.layout.links as unknown[]).slice(1) };
    expect(codes({ ...document, layout: bare }).join()).toContain("layout");
    const level = { from: { on: "car-body", at: "toe-inner" }, to: { on: "car-body", at: "spring-body" } };
    const still = computeBodies({
      file: { ...file, layout: { ...file.layout, spring: level } },
      torn: null,
      condition: braked,
    });
    expect("findings" in still && still.findings.map(({ code }) => code)).toEqual(["cannot-carry"]);
  });
});
