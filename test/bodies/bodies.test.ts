import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  type BodiesAsked,
  type BodiesFault,
  type BodiesFile,
  type BodiesSheet,
  computeBodies,
  computeBodiesHold,
  doubtWords,
  formatBodiesCsv,
  placeOfFault,
} from "#casework";
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
const torn: BodiesFault = { kind: "torn", place: { part: "arm-front", end: null } };
const { torn_share: _share, unsprung_kg: _mass, droop_stop_mm: _stop, ...question } = document;
const sheetOf = (change: Partial<BodiesAsked> = {}): BodiesSheet => {
  const answer = computeBodies({ file, fault: torn, condition: braked, ...change });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.sheet;
};
const sheet = sheetOf();

describe("a suspension of several bodies from a file", () => {
  it("says what a torn bush does as the calculation says it, with its band", () => {
    const answer = askDoor("linkage.bodies-compliance", {
      ...question,
      hold: "contact_height",
      faults: [{ part: "arm-front", factor: 0.275, factor_low: 0.15, factor_high: 0.4 }],
      loads: [{ braking_n: 2000, contact_rise_mm: 10 }],
    });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const [state] = (answer.output as { states: { less_sound: Record<string, number> & { toe_band_deg: number[] } }[] })
      .states;
    const [toe, camber] = sheet.figures;
    expect(toe?.value).toBeCloseTo(state?.less_sound.toe_deg ?? Number.NaN, 10);
    expect(toe?.u).toBeCloseTo(state?.less_sound.toe_sd_deg ?? Number.NaN, 10);
    expect(camber?.value).toBeCloseTo(state?.less_sound.camber_deg ?? Number.NaN, 10);
    expect(sheet.sentence).toMatch(
      /^Under 2\.0 kN of braking at this wheel the wheel turns (in|out) \d\.\d+° further with the front bush of the arm torn\.$/,
    );
    const [low = 0, high = 0] = toe?.band ?? [];
    expect([low, high]).toEqual(state?.less_sound.toe_band_deg.map((bound) => expect.closeTo(bound, 10)));
    expect(low).toBeLessThan(Math.min(...(toe?.range ?? [])));
    expect(high).toBeGreaterThan(Math.max(...(toe?.range ?? [])));
  });

  it("draws toe and camber over travel, sound and torn, and gives the sound toe at the asked travel", () => {
    const plots = sheet.plots.map(({ figure, lines }) => [figure, lines.map(({ words }) => words)]);
    expect(plots).toEqual([
      ["toe", ["sound", "torn"]],
      ["camber", ["sound", "torn"]],
    ]);
    for (const { lines } of sheet.plots)
      for (const { rises, values, low, high } of lines) {
        expect(rises.length).toBeGreaterThan(8);
        values.forEach((value, i) => {
          expect(low[i]).toBeLessThanOrEqual(value);
          expect(high[i]).toBeGreaterThanOrEqual(value);
        });
      }
    expect(sheetOf({ fault: null }).plots.map(({ lines }) => lines.length)).toEqual([1, 1]);
  });

  it("says what is not computed, and where it binds", () => {
    expect(sheet.notComputed).not.toContain("how to hold it");
    expect(sheetOf({ file: fileOf(question) }).notComputed).toContain("unsprung_kg and droop_stop_mm");
    expect(sheet.binds).toMatch(/binds/);
    expect(sheet.invented).toBe(true);
  });

  it("keeps every link as long as it is, whichever bodies it joins, but for what its rubber gives", () => {
    const rigid = fileOf({ ...document, rubber: [], members: [] });
    const placed = sheetOf({ file: rigid, fault: null, condition: { ...braked, contactRise: 0.05 } }).placed;
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
    const marksOf = (fault: BodiesSheet["fault"], beside: BodiesSheet["faultyPlaced"]) =>
      drawBodies(sheet.placed as NonNullable<BodiesSheet["placed"]>, {
        ...room,
        beside,
        at: fault && placeOfFault(fault),
      }).marks;
    const accents = (fault: BodiesSheet["fault"]) => JSON.stringify(marksOf(fault, null)).split('"accent"').length - 1;
    // A loose link is ringed at both of its ends.
    const loose: BodiesFault = { kind: "loose", part: "toe-link", play: 0.001 };
    expect([accents(null), accents(torn), accents(loose)]).toEqual([0, 1, 2]);
    expect(marksOf(null, sheet.faultyPlaced).length).toBeGreaterThan(marksOf(null, null).length);
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
      fault: null,
      condition: braked,
    });
    expect("findings" in still && still.findings.map(({ code }) => code)).toEqual(["cannot-carry"]);
  });
});

describe("a layout alone", () => {
  const { spring: _spring, damper: _damper, ...bare } = document.layout;

  it("is moved as the rigid linkage it is, with a spring or without one", () => {
    const steps = [-50, 0, 50].map((wheel_travel_mm) => ({ wheel_travel_mm }));
    const answer = askDoor("linkage.bodies", { layout: bare, steps });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const { positions } = answer.output as { positions: { toe_deg: number; contact_mm?: number[] }[] };
    for (const layout of [bare, document.layout]) {
      const plain = fileOf(layout);
      expect(plain.isPlain).toBe(true);
      const still = sheetOf({ file: plain, fault: null });
      expect(still.sentence).toMatch(/^The wheel turns (in|out) /);
      expect(still.howSure).toContain("no deviation");
      expect(still.computedSo).toContain("nothing in the file gives");
      // Nothing is uncertain, so no figure has a band, not even one of no width.
      expect(new Set(still.figures.map(({ band }) => band))).toEqual(new Set([null]));
      expect(still.placed?.spring === null).toBe(layout === bare);
      const [toe] = still.plots;
      const line = toe?.lines[0];
      expect(line?.low).toEqual(line?.values);
      // At ride height the wheel stands as the file says, whatever pulls at it.
      expect(line?.values[line.rises.findIndex((rise) => Math.abs(rise) < 1e-9)]).toBeCloseTo(
        positions[1]?.toe_deg ?? 0,
        9,
      );
    }
  });

  it("says which of its points nothing uses and which parts are called the same, and is computed all the same", () => {
    const whole = document.layout;
    type Part = Record<string, unknown>;
    const points = [...(whole.points as Part[]), { name: "spare", at_mm: [-2700, 600, 300] }];
    const links = (whole.links as Part[]).map((link) => ({ ...link, label: "Link" }));
    const doubtful = { ...whole, points, links };
    const wanted = [
      { code: "not-used", path: `points[${points.length - 1}]`, got: '"spare"' },
      { code: "repeated-name", path: "links[1].label", got: '"Link"' },
      { code: "repeated-name", path: "links[2].label", got: '"Link"' },
    ];
    expect(fileOf(doubtful).doubts).toMatchObject(wanted);
    expect(fileOf(whole).doubts).toEqual([]);
    expect(doubtWords(fileOf(doubtful))).toContain('points[13], "spare": Nothing uses this point');
    const answer = askDoor("linkage.bodies", { layout: doubtful, steps: [{ wheel_travel_mm: 0 }] });
    expect("output" in answer && answer.output).toMatchObject({
      doubts: wanted.map(({ path, ...rest }) => ({ ...rest, path: `layout.${path}` })),
    });
    const sound = askDoor("linkage.bodies", { layout: whole, steps: [{ wheel_travel_mm: 0 }] });
    expect("output" in sound && sound.output).not.toHaveProperty("doubts");
  });

  it("is refused with a body that nothing joins", () => {
    const parsed = parseBodiesFile(JSON.stringify({ ...bare, bodies: [...(bare.bodies as string[]), "subframe"] }));
    const found = "findings" in parsed ? parsed.findings.map(({ code, path }) => `${code} ${path}`) : [];
    expect(found).toEqual(["not-used bodies[2]", "constraint-too-few joints"]);
  });

  it("is told its own mistakes, with the paths of a layout", () => {
    const parsed = parseBodiesFile(JSON.stringify({ ...bare, links: (bare.links as unknown[]).slice(1) }));
    const found = "findings" in parsed ? parsed.findings.map(({ code, path }) => `${code} ${path}`) : [];
    expect(found).toEqual(["constraint-too-few joints"]);
  });
});

describe("a place of it loose or firmer", () => {
  it("is told in words, with the lines and figures of that fault", () => {
    const loose = sheetOf({ fault: { kind: "loose", part: "toe-link", play: 0.001, assumed: true } });
    expect(loose.sentence).toMatch(/with 1 mm of play in the toe link\.$/);
    expect(loose.howSure).toContain("The play is assumed");
    expect(loose.plots[0]?.lines.map(({ state }) => state)).toEqual(["sound", "loose"]);
    const firmer = sheetOf({ fault: { kind: "firmer", place: { part: "arm-front", end: null }, low: 1.5, high: 3 } });
    expect(firmer.sentence).toMatch(/with the front bush of the arm 1\.5 to 3 times as firm\.$/);
    const [toe] = firmer.figures;
    expect(toe?.range?.[0]).toBeLessThan(toe?.value ?? 0);
    expect(toe?.range?.[1]).toBeGreaterThan(toe?.value ?? 0);
    // A firmer bush does the other way round what a torn one does.
    expect((toe?.value ?? 0) * (sheet.figures[0]?.value ?? 0)).toBeLessThan(0);
  });

  const byHardness = (from: number | null, to: number | null, part = "arm-front"): BodiesFault => ({
    kind: "firmer",
    place: { part, end: null },
    hardness: { from, to },
  });

  it("is firmer by hardness as by the factors that hardness means", () => {
    const asked = askDoor("rubber.firmer", { old_hardness_shore_a: 50, new_hardness_shore_a: 75 });
    if ("findings" in asked) throw new Error(JSON.stringify(asked.findings));
    const { factor, factor_low, factor_high } = asked.output as Record<string, number>;
    const [harder, low, middle, high] = [
      byHardness(50, 75),
      ...[factor_low, factor, factor_high].map(
        (by = Number.NaN): BodiesFault => ({
          kind: "firmer",
          place: { part: "arm-front", end: null },
          low: by,
          high: by,
        }),
      ),
    ].map((fault) => sheetOf({ fault: fault ?? null }));
    const [toe] = harder?.figures ?? [];
    expect(toe?.value).toBeCloseTo(middle?.figures[0]?.value ?? Number.NaN, 10);
    const ends = [low, high].map((end) => end?.figures[0]?.value ?? Number.NaN);
    expect(toe?.range).toEqual([Math.min(...ends), Math.max(...ends)].map((end) => expect.closeTo(end, 10)));
    expect(toe?.inputs.map(({ value }) => value).join()).toContain("50 and 75 Shore A");
    expect(harder?.sentence).toMatch(/with the front bush of the arm firmer, 50 to 75 Shore A\.$/);
    expect(harder?.howSure).toContain("50 to 75 Shore A makes");
    const near = sheetOf({ fault: byHardness(60, 62) });
    expect(near.sentence).toContain("it may be no firmer than the sound one");
    expect(near.figures[0]?.settle).toContain("too near to each other");
  });

  it.each<[string, BodiesFault, readonly string[]]>([
    ["a hardness nobody said", byHardness(null, 65), ["fault.hardness.from"]],
    ["a softer part", byHardness(70, 55), ["fault.hardness.to"]],
    ["a hardness no rubber has", byHardness(50, 150), ["fault.hardness.to"]],
    ["a ball of rubber", byHardness(50, 60, "arm-ball"), ["fault.part", "fault.hardness.to"]],
  ])("is refused by hardness where it is %s, over travel and held", (_what, fault, paths) => {
    for (const answer of [computeBodies({ file, fault, condition: braked }), computeBodiesHold(file, fault)])
      expect("findings" in answer && answer.findings.map(({ path }) => path)).toEqual(paths);
  });

  it.each<[string, BodiesFault, string]>([
    ["rubber where there is none", { kind: "torn", place: { part: "arm-ball", end: null } }, "fault.part"],
    ["a part that is not there", { kind: "loose", part: "arm-bal", play: 0.001 }, "fault.part"],
    ["play of nothing", { kind: "loose", part: "arm-ball", play: 0 }, "fault.play"],
    [
      "a range the wrong way round",
      { kind: "firmer", place: { part: "arm-rear", end: null }, low: 3, high: 2 },
      "fault.low",
    ],
  ])("refuses %s, over travel and held", (_what, fault, path) => {
    const over = computeBodies({ file, fault, condition: braked });
    const held = computeBodiesHold(file, fault);
    for (const answer of [over, held])
      expect("findings" in answer && answer.findings.map((finding) => finding.path)).toEqual([path]);
  });

  it("is handed over as comma-separated values, a row for each line and travel", () => {
    const [head, ...rows] = formatBodiesCsv(sheet, { file, fault: torn, condition: braked }).trimEnd().split("\r\n");
    expect(head).toBe("layout,braking_n,lateral_n,drive_n,line,figure,unit,travel_mm,value,low,high");
    expect(rows).toHaveLength(
      sheet.plots.flatMap(({ lines }) => lines.map(({ rises }) => rises.length)).reduce((sum, n) => sum + n, 0),
    );
    expect(rows[0]?.startsWith('"Lower carrier arm with integral link, rear",2000,0,0,sound,toe,deg,')).toBe(true);
  });
});

describe("the same held", () => {
  const answer = computeBodiesHold(file, { kind: "loose", part: "arm-ball", play: 0.001 });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  const { hold } = answer;

  it("gives the forces of the calculation, with a band that holds them", () => {
    const { sd_mm: _sd, ...rest } = question as { sd_mm?: unknown };
    const asked = askDoor("linkage.bodies-load-states", {
      ...rest,
      unsprung_kg: 38,
      droop_stop_mm: 80,
      under: [{ part: "carrier-arm" }],
    });
    if ("findings" in asked) throw new Error(JSON.stringify(asked.findings));
    const { states } = asked.output as { states: { joints: { part: string; end: string; load_n: number }[] }[] };
    expect(hold.states.map(({ key }) => key)).toEqual(["ride", "hanging", "under/carrier-arm"]);
    hold.states.forEach(({ parts }, i) => {
      for (const { part, load, low, high } of parts) {
        const want = states[i]?.joints.find((joint) => joint.part === part && joint.end !== "to");
        expect(load).toBeCloseTo(want?.load_n ?? Number.NaN, 8);
        expect(low).toBeLessThanOrEqual(load);
        expect(high).toBeGreaterThan(load);
      }
    });
  });

  it("says how its play is seen, and what hands tell", () => {
    expect(hold.sentence).toMatch(/^Standing, the .+ is pressed together most, by .+: .+\. .+\.$/);
    expect(hold.best.map(({ part }) => part)).toEqual(
      file.layout.joints.map(({ name }) => name).concat(file.layout.links.map(({ name }) => name)),
    );
    const [standing, ...others] = hold.states;
    expect(standing?.rocks).toEqual([]);
    for (const { rocks } of others) {
      expect(rocks.map(({ rock }) => rock)).toEqual(["12-6", "3-9"]);
      for (const { sound, faulty, tells } of rocks) {
        expect(faulty ?? 0).toBeGreaterThanOrEqual(sound - 1e-12);
        expect(tells).not.toBeNull();
      }
    }
    expect(hold.cautions.join(" ")).toContain("stands");
  });

  it("is refused where the file does not say what moves", () => {
    const bare = computeBodiesHold(fileOf(question), null);
    expect("findings" in bare && bare.findings.map(({ path }) => path)).toEqual(["unsprung_kg"]);
    const half = parseBodiesFile(JSON.stringify({ ...question, unsprung_kg: 30 }));
    expect("findings" in half && half.findings.map(({ path }) => path)).toEqual(["droop_stop_mm"]);
  });
});
