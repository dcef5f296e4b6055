import { describe, expect, it } from "vitest";
import {
  type Condition,
  computeFaultEffect,
  computeTravelSheet,
  formatChange,
  formatEffectCsv,
  formatTravelCsv,
  type TravelFigure,
  type TravelSheet,
  type TravelSubject,
  travelFigureForms,
  turnOfRackLeft,
} from "#casework";
import { askDoor, formatComplianceQuestion, formatTravelQuestion, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import type { Corner, Family } from "#vehicle";

const readFamily = (id: string): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};

const ouzel = readFamily("ouzel-saloon");
const dunlin = readFamily("dunlin-hatch");
const siskin = readFamily("siskin-coupe");
const condition: Condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };
const TORN_PLACE = "rear-left/trailing-link/inner-bush";
const sound: TravelSubject = { kind: "sound" };

const compute = (
  family: Family,
  corner: Corner,
  subjects: readonly TravelSubject[],
  figures: readonly TravelFigure[] = ["toe", "camber"],
  at: Condition = condition,
): TravelSheet => {
  const answer = computeTravelSheet({ family, corner, condition: at, subjects, figures });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.sheet;
};

const lineOf = (sheet: TravelSheet, figure: TravelFigure, words: string) => {
  const line = sheet.plots.find((p) => p.figure === figure)?.lines.find((l) => l.words.startsWith(words));
  if (!line) throw new Error(`no line ${words} of ${figure}`);
  return line;
};

describe("states of one corner over its travel", () => {
  const torn: TravelSubject = { kind: "rubber", position: TORN_PLACE, fault: { kind: "torn", grade: 3 } };
  const firmer: TravelSubject = { kind: "rubber", position: TORN_PLACE, fault: { kind: "firmer", factor: 2 } };
  const lowered: TravelSubject = { kind: "lowered", by: 0.02 };
  const sheet = compute(ouzel, "rear-left", [sound, torn, firmer, lowered]);

  it("are the lines that what a fault does draws, with their bands", () => {
    const question = { corner: "rear-left", position: TORN_PLACE, fault: torn.fault, condition } as const;
    const answer = computeFaultEffect(ouzel, question);
    if ("findings" in answer) throw new Error("refused");
    for (const figure of ["toe", "camber"] as const) {
      const lines = answer.effect.curves.find(({ quantity }) => quantity === figure)?.lines ?? [];
      const drawn = lineOf(sheet, figure, "torn");
      expect(drawn.values).toEqual(lines.find(({ state }) => state === "torn")?.values);
      expect(drawn.high).toEqual(lines.find(({ state }) => state === "torn")?.high);
      const own = lineOf(sheet, figure, "sound");
      lines
        .find(({ state }) => state === "sound")
        ?.values.forEach((value, i) => {
          expect(own.values[i]).toBeCloseTo(value, 9);
        });
    }
  });

  it("say of a torn rubber what its effect says, against the sound corner, at the travel asked for too", () => {
    const at = { ...condition, contactRise: 0.025 };
    const torn25 = compute(ouzel, "rear-left", [sound, torn], ["toe"], at);
    const answer = computeFaultEffect(ouzel, {
      corner: "rear-left",
      position: TORN_PLACE,
      fault: torn.fault,
      condition: at,
    });
    if ("findings" in answer) throw new Error("refused");
    const [row] = torn25.rubber;
    expect(row?.toe.map(({ travel }) => travel)).toEqual([-0.05, 0, 0.025, 0.05]);
    const figure = answer.effect.figures.find(({ key }) => key === "toe-change");
    expect(row?.toe[2]).toEqual({ travel: 0.025, value: figure?.value, band: figure?.band, sure: figure?.signSure });
    const lines = (["torn", "sound"] as const).map((words) => lineOf(torn25, "toe", words));
    const [faulty, own] = lines.map((line) => line.values[line.rises.indexOf(0.05)] ?? Number.NaN);
    expect(row?.toe[3]?.value).toBeCloseTo((faulty ?? 0) - (own ?? 0), 9);
    expect(torn25.sentences[1]).toMatch(
      /^Torn: trailing link, front bush: at 25 mm of bump, against the sound corner under the same force, its toe goes 0\.\d\d° further in \(0/,
    );
    expect(row?.means).toContain("% of its sound rate (invented)");
    expect(torn25.rows[0]?.asked?.toe.travel).toBe(0.025);
    expect(torn25.verdicts).toEqual([]);
  });

  it("go out of one fault with the same columns, its changes against sound with them", () => {
    const question = { corner: "rear-left", position: TORN_PLACE, fault: torn.fault, condition } as const;
    const answer = computeFaultEffect(ouzel, question);
    if ("findings" in answer) throw new Error("refused");
    const rows = formatEffectCsv(ouzel, answer.effect)
      .trimEnd()
      .split("\r\n")
      .map((row) => row.split(","));
    expect(rows[0]).toEqual(
      formatTravelCsv(sheet, { family: ouzel, corner: "rear-left", condition }).split("\r\n")[0]?.split(","),
    );
    const at = (line: string, figure: string) =>
      Number(rows.find((row) => row[6] === line && row[7] === figure && row[9] === "0")?.[10]);
    expect(at("torn", "toe") - at("sound", "toe")).toBeCloseTo(at("torn", "toe less sound"), 5);
    expect(rows.filter((row) => row[7] === "camber less sound")).toHaveLength(answer.effect.rises.length);
  });

  it("take a loose place as what a fault does has it, and say what was assumed of it", () => {
    const loose = { kind: "loose", play: 0.001, assumed: true } as const;
    const both = compute(ouzel, "rear-left", [sound, { kind: "rubber", position: TORN_PLACE, fault: loose }, firmer]);
    const question = { corner: "rear-left", position: TORN_PLACE, fault: loose, condition } as const;
    const answer = computeFaultEffect(ouzel, question);
    if ("findings" in answer) throw new Error("refused");
    const toe = answer.effect.curves.find(({ quantity }) => quantity === "toe");
    expect(lineOf(both, "toe", "loose 1.0 mm").values).toEqual(
      toe?.lines.find(({ state }) => state === "loose")?.values,
    );
    expect(both.rubber.map(({ state }) => state)).toEqual(["loose", "firmer"]);
    expect(both.rubber[0]?.means).toContain("its play is assumed");
  });

  it("show no end of a band as nought that is not", () => {
    const change = { travel: 0, value: 0.011, band: [0.0007, 0.0213], sure: true } as const;
    expect(formatChange(change)).toEqual({ value: "+0.01°", low: "+0.0007°", high: "+0.03°" });
    expect(formatChange({ ...change, value: -0.011, band: [-0.0213, -0.0007] }).high).toBe("−0.0007°");
  });

  it("show no value outside of the ends of its band, which have more decimals near nought", () => {
    const change = { travel: 0, value: -0.0054, band: [-0.0058, -0.0041], sure: true } as const;
    expect(formatChange(change)).toEqual({ value: "−0.005°", low: "−0.006°", high: "−0.004°" });
  });

  it("share their heights, every 10 mm from ride height, whatever stop ends them", () => {
    const heights = sheet.plots.flatMap(({ lines }) => lines.map(({ rises }) => rises));
    expect(heights).toHaveLength(8);
    for (const rises of heights)
      for (const rise of rises.slice(1, -1)) expect(rise * 100).toBeCloseTo(Math.round(rise * 100), 9);
    expect(lineOf(sheet, "toe", "lowered 20 mm").rises.at(-1)).toBeCloseTo(ouzel.rear.bumpStop - 0.02, 12);
  });

  it("say where the links lock as the door of the linkage does, and where they do not", () => {
    const fronts = compute(siskin, "front-left", [sound]);
    const door = askDoor("linkage.travel", formatTravelQuestion(siskin, "front-left", [0]));
    if ("findings" in door) throw new Error(JSON.stringify(door.findings));
    const [low, high] = (door.output as { report: { binds_at_mm: (number | null)[] } }).report.binds_at_mm;
    expect(high).toBeNull();
    expect(fronts.rows[0]?.binds).toBe(
      `The links lock at ${Math.abs(low ?? 0).toFixed(0)} mm of droop, in the upper front link, spring link and upper rear link. On the car its stops end the travel at 86 mm of droop and 74 mm of bump.`,
    );
    expect(sheet.rows[0]?.binds).toMatch(/^No link locks within 200 mm of ride height; its stops/);
  });

  it("lowered are the sound line, counted from another height", () => {
    const [low, own] = [lineOf(sheet, "toe", "lowered 20 mm"), compute(ouzel, "rear-left", [sound])];
    const at = (rise: number) => compute(ouzel, "rear-left", [sound], ["toe"], { ...condition, contactRise: rise });
    const start = low.rises.indexOf(0);
    expect(at(0.02).poses[0]?.toe).toBeCloseTo(((low.values[start] ?? Number.NaN) * Math.PI) / 180, 9);
    expect(low.rises.at(-1)).toBeLessThanOrEqual(ouzel.rear.bumpStop - 0.02 + 1e-12);
    expect(own.rows[0]?.toe.map(({ travel }) => travel)).toEqual([-0.05, 0.05]);
  });

  it("say each change of the sound corner as the door of its linkage gives it", () => {
    const still = { ...condition, braking: 0 };
    const [row] = compute(ouzel, "rear-left", [sound], ["toe"], still).rows;
    const door = askDoor("linkage.compliance", {
      ...soundCorner(ouzel, "rear-left"),
      loads: [{}, { contact_rise_mm: 50 }],
    });
    if ("findings" in door) throw new Error(JSON.stringify(door.findings));
    const [rest, up] = (door.output as { states: { toe_deg: number; camber_deg: number }[] }).states;
    const change = (key: "toe" | "camber"): number | undefined =>
      row?.[key].find(({ travel }) => travel === 0.05)?.value;
    expect(change("toe")).toBeCloseTo((up?.toe_deg ?? 0) - (rest?.toe_deg ?? 0), 8);
    expect(change("camber")).toBeCloseTo((up?.camber_deg ?? 0) - (rest?.camber_deg ?? 0), 8);
  });

  it("draw the wheel up to its stops, further than the curves go, and not beyond", () => {
    const at = (rise: number) => compute(ouzel, "rear-left", [sound], ["toe"], { ...condition, contactRise: rise });
    const { bumpStop, droopStop } = ouzel.rear;
    for (const stop of [bumpStop, -droopStop]) {
      expect(Math.abs(stop)).toBeGreaterThan(0.08);
      expect(at(stop).poses[0]?.contact[2]).toBeCloseTo((at(0).poses[0]?.contact[2] ?? 0) + stop, 9);
      expect(at(stop * 1.05).poses).toEqual([null]);
    }
  });

  it("leave a figure out where it is not computed, and say so", () => {
    const other = compute(ouzel, "rear-left", [sound, torn], ["roll-centre", "caster"]);
    expect(other.plots[0]?.leftOut).toEqual([expect.stringContaining("toe and camber only")]);
    expect(other.plots[1]?.lines).toEqual([]);
    expect(other.plots[1]?.leftOut[0]).toBe("sound: this axle has no such figure");
  });
});

/** The sound corner of a family as linkage.compliance takes it, without a force. */
function soundCorner(family: Family, corner: Corner): Record<string, unknown> {
  const fault = { kind: "firmer", factor: 1 } as const;
  const still = { ...condition, braking: 0 };
  return formatComplianceQuestion(family, { corner, position: "", fault, condition: still }, null);
}

describe("figures of the rigid linkage", () => {
  it("at ride height are those of linkage.travel", () => {
    const { rate_n_per_mm: _, ...bareSpring } = soundCorner(siskin, "front-left").spring as Record<string, unknown>;
    const figures = travelFigureForms.map(({ figure }) => figure);
    const sheet = compute(siskin, "front-left", [sound], figures);
    const door = askDoor("linkage.travel", { ...formatTravelQuestion(siskin, "front-left", [0]), spring: bareSpring });
    if ("findings" in door) throw new Error(JSON.stringify(door.findings));
    const [p] = (door.output as { positions: Record<string, number>[] }).positions;
    const rest = (figure: TravelFigure): number => {
      const line = lineOf(sheet, figure, "sound");
      return line.values[line.rises.indexOf(0)] ?? Number.NaN;
    };
    expect(rest("caster")).toBeCloseTo(p?.caster_deg ?? Number.NaN, 9);
    expect(rest("trail")).toBeCloseTo(p?.trail_mm ?? Number.NaN, 7);
    expect(rest("scrub")).toBeCloseTo(p?.scrub_mm ?? Number.NaN, 7);
    expect(rest("roll-centre")).toBeCloseTo(p?.roll_centre_height_mm ?? Number.NaN, 7);
    expect(rest("spring-ratio")).toBeCloseTo(p?.spring_ratio ?? Number.NaN, 9);
    expect([rest("track"), rest("wheelbase")]).toEqual([0, 0]);
  });
});

describe("two layouts beside each other", () => {
  const sheet = compute(ouzel, "rear-left", [sound, { kind: "beside", family: siskin }], ["toe", "camber"], {
    ...condition,
    braking: 0,
  });

  it("are compared by figures, and left open where the bands do not decide", () => {
    const [own, other] = sheet.rows;
    for (const key of ["toe", "camber"] as const)
      for (const travel of [-0.05, 0.05]) {
        const [a, b] = [own, other].map((row) => row?.[key].find((change) => change.travel === travel));
        if (!a || !b) throw new Error("no figures");
        const verb = key === "toe" ? "steers" : "changes its camber";
        const at = `at 50 mm of ${travel > 0 ? "bump" : "droop"}`;
        const said = sheet.sentences.slice(2).filter((s) => s.includes(verb) && s.toLowerCase().includes(at));
        expect(said).toHaveLength(1);
        const figures = [a, b].map(({ value }) => `${Math.abs(value).toFixed(2)}°`);
        for (const figure of figures) expect(said[0]?.includes(figure)).toBe(a.sure && b.sure);
        const apart = Math.abs(Math.abs(a.value) - Math.abs(b.value));
        const widest = Math.max(a.band[1] - a.band[0], b.band[1] - b.band[0]);
        if (apart < widest / 4) expect(said.some((s) => s.includes("too close to call"))).toBe(true);
        const more = Math.abs(a.value) > Math.abs(b.value) ? [ouzel, siskin] : [siskin, ouzel];
        if (apart > 2 * widest)
          expect(said.some((s) => s.includes(`${more[0]?.name} ${verb} more than ${more[1]?.name}`))).toBe(true);
      }
  });

  it("name what would settle it, of either car, where it is too close to call", () => {
    const coarse = structuredClone(demoFamilySheets["dunlin-hatch"]) as { front: { defaults: { sd_mm: number[] } } };
    Object.assign(coarse, { id: "taped", name: "Taped hatch" });
    coarse.front.defaults.sd_mm = [20, 20, 12];
    const parsed = parseFamily(coarse);
    if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
    const pairs = [
      [ouzel, siskin, "rear-left"],
      [ouzel, dunlin, "rear-left"],
      [siskin, parsed.family, "front-left"],
    ] as const;
    const open = pairs.flatMap(([own, beside, corner]) => {
      const answer = compute(own, corner, [sound, { kind: "beside", family: beside }], ["toe"]);
      expect(answer.open.map(({ asked }) => `${asked} is too close to call`)).toEqual(
        answer.verdicts.flatMap((words) => words.match(/^Which .* is too close to call/)?.[0] ?? []),
      );
      return answer.open.map(({ settle }) => settle);
    });
    for (const settle of open)
      expect(settle).toMatch(
        /^(To settle it takes|No measuring of joints settles it; |Neither measuring all joints nor )/,
      );
    expect(open.some((settle) => settle.includes(" of the Taped hatch"))).toBe(true);
    expect(open.some((settle) => settle.includes("toe read on both cars at ride height and at 50 mm of droop"))).toBe(
      true,
    );
  });

  it("answers for a strut and a five-link front of its own accord", () => {
    const fronts = compute(ouzel, "front-left", [sound, { kind: "beside", family: dunlin }], ["camber"]);
    expect(fronts.sentences.filter((s) => s.includes(dunlin.name)).length).toBeGreaterThanOrEqual(3);
  });
});

describe("a car line steered from the other side of its wheels", () => {
  const steered = { ...condition, braking: 0, rack: 0.03 };
  const turnOf = (family: Family, rack: number): number => {
    const sheet = compute(family, "front-left", [sound], ["toe"], { ...steered, rack });
    return Math.sign((sheet.poses[0]?.toe ?? 0) - (compute(family, "front-left", [sound]).poses[0]?.toe ?? 0));
  };

  it("has its rack moved so that both cars turn the same way", () => {
    const opposite = [dunlin, siskin].filter((family) => turnOfRackLeft(family.front) !== turnOfRackLeft(ouzel.front));
    expect(opposite.length).toBeGreaterThan(0);
    for (const family of opposite) {
      const beside = compute(ouzel, "front-left", [sound, { kind: "beside", family }], ["toe"], steered);
      expect(Math.sign(beside.poses[1]?.toe ?? 0)).toBe(Math.sign(beside.poses[0]?.toe ?? 0));
      expect(turnOf(family, 0.03)).toBe(-turnOf(ouzel, 0.03));
    }
  });
});

describe("the band of the roll centre", () => {
  it("is that of linkage.band for points as well known", () => {
    const line = lineOf(compute(siskin, "front-left", [sound], ["roll-centre"]), "roll-centre", "sound");
    const rest = line.rises.indexOf(0);
    const sd = siskin.front.links[0]?.inner.sd ?? [0, 0, 0];
    const same = siskin.front.links.every(({ inner, outer }) => `${inner.sd}` === `${sd}` && `${outer.sd}` === `${sd}`);
    expect(same).toBe(true);
    const { steps: _, ...corner } = formatTravelQuestion(siskin, "front-left", []) as { steps: unknown };
    const [x, y, z] = sd.map((metres) => metres * 1000);
    const band = askDoor("linkage.band", { ...corner, sd_mm: { x, y, z }, travels_mm: [0] });
    if ("findings" in band) throw new Error(JSON.stringify(band.findings));
    const [p] = (band.output as { positions: Record<string, number>[] }).positions;
    const half = ((line.high[rest] ?? 0) - (line.low[rest] ?? 0)) / 2;
    expect(half / (1.959963984540054 * (p?.roll_centre_height_sd_mm ?? Number.NaN))).toBeCloseTo(1, 6);
  });
});

describe("a travel sheet", () => {
  it("is the mirror image on the other side", () => {
    const [left, right] = (["rear-left", "rear-right"] as const).map((corner) =>
      compute(ouzel, corner, [sound], ["toe", "wheelbase", "track"]),
    );
    expect(right?.plots).toEqual(left?.plots);
  });

  it("goes out as comma-separated values, every line and travel to a millionth", () => {
    const subjects: readonly TravelSubject[] = [sound, { kind: "lowered", by: 0.02 }];
    const sheet = compute(ouzel, "rear-left", subjects);
    const asked = { family: ouzel, corner: "rear-left", condition, subjects, figures: ["toe", "camber"] } as const;
    const rows = formatTravelCsv(sheet, asked).trimEnd().split("\r\n");
    const points = sheet.plots.flatMap(({ lines }) => lines.flatMap(({ rises }) => rises)).length;
    expect(rows).toHaveLength(points + 1);
    expect(rows[0]).toBe(
      "car_line,corner,braking_n,lateral_n,drive_n,rack_mm,line,figure,unit,travel_mm,value,low,high",
    );
    expect(rows[1]?.split(",").slice(0, 10)).toEqual(
      [ouzel.name, "rear-left", 2000, 0, 0, 0, "sound", "toe", "deg", -80].map(String),
    );
    const line = lineOf(sheet, "toe", "sound");
    const written = rows[1]?.split(",").slice(10) ?? [];
    [line.values[0], line.low[0], line.high[0]].forEach((value, i) => {
      expect(written[i]).toMatch(/^-?\d+\.\d{1,6}$/);
      expect(Math.abs(Number(written[i]) - (value ?? Number.NaN))).toBeLessThan(0.51e-6);
    });
  });

  it("refuses no line, five, and a place nobody knows", () => {
    const ask = (subjects: readonly TravelSubject[]) =>
      computeTravelSheet({ family: ouzel, corner: "rear-left", condition, subjects, figures: ["toe"] });
    for (const subjects of [[], [sound, sound, sound, sound, sound]])
      expect(ask(subjects)).toMatchObject({ findings: [{ code: "out-of-range", path: "subjects" }] });
    const nowhere: TravelSubject = { kind: "rubber", position: "nowhere", fault: { kind: "firmer", factor: 2 } };
    expect(ask([nowhere])).toMatchObject({ findings: [{ code: "unknown-position" }] });
  });

  it("answers whether the five-link loses less camber and steers less than the strut, and the other way round", () => {
    const [coupe, hatch] = [siskin, dunlin];
    const answers = (family: Family, beside: Family) => {
      const answer = computeTravelSheet({
        family,
        corner: "front-left",
        condition: { contactRise: 0, rack: 0, braking: 0, lateral: 0, drive: 0 },
        subjects: [{ kind: "sound" }, { kind: "beside", family: beside }],
        figures: ["toe", "camber"],
      });
      if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
      const { rows, sentences } = answer.sheet;
      const bump = rows.map(({ camber }) => camber.find(({ travel }) => travel > 0)?.value ?? Number.NaN);
      return { bump, said: sentences.filter((sentence) => sentence.startsWith("Does ")) };
    };
    const five = answers(coupe, hatch);
    expect(five.bump[0]).toBeLessThan((five.bump[1] ?? Number.NaN) - 0.5);
    expect(five.said[0]).toMatch(
      /^Does the five-link of .* lose less camber in a bend than the strut of .*\? Yes: 50 mm of bump takes its top 1\.\d+° inward/,
    );
    expect(answers(hatch, coupe).said[0]).toMatch(/^Does the strut of .*\? No: /);
    expect(five.said[1]).toBe("Does it steer less over bumps? Too close to call, bump and droop taken together.");
    expect(answers(coupe, { ...coupe, id: "twin", name: "Twin" }).said).toEqual([]);
  });
});
