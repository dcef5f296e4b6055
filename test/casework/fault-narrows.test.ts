import { describe, expect, it } from "vitest";
import { computeFaultEffect, type FaultEffect, formatBandSizes, type RubberFault } from "#casework";
import { parseFamilyText, parseSilhouette } from "#contract";
import { type Axle, type Family, type HardPoint, type Joint, positionsOf } from "#vehicle";
import { demoSheetText } from "../family-sheets/edit-sheet.ts";

const familyOf = (parsed: ReturnType<typeof parseSilhouette>): Family => {
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const scaled = familyOf(parseSilhouette({ front_layout: "double-wishbone", rear_layout: "five-link" }));
const ouzel = familyOf(parseFamilyText(demoSheetText("ouzel-saloon")));

const condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };
const effectAt = (family: Family, position: string, fault: RubberFault): FaultEffect => {
  const corner = position.slice(0, position.indexOf("/")) as FaultEffect["question"]["corner"];
  const answer = computeFaultEffect(family, { corner, position, fault, condition });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.effect;
};
const torn: RubberFault = { kind: "torn", grade: 3 };
const tornPlaces = (family: Family, side: string): readonly string[] =>
  positionsOf(family)
    .filter((place) => place.side === side && place.joint?.end === "inner" && place.kind === "bush")
    .map(({ id }) => id);

type Way = { readonly axis: 0 | 1 | 2 | null; readonly place: string };

/** The readings a text names, one per place and way, as a person would go and take them. */
const readingsIn = (text: string): readonly Way[] => {
  const starts = [
    ["Heights over a level plane", 2],
    ["Places fore and aft by tape", 0],
    ["Places across the car by tape", 1],
    ["Rates on the bench", null],
  ] as const;
  return starts.flatMap(([start, axis]) => {
    const said = new RegExp(`${start} \\(±\\d+ (?:mm|%)\\): ([^.]*)\\.`).exec(text)?.[1] ?? "";
    return [...said.matchAll(/the (.+?)'s (inner and outer|outer and inner|inner|outer) joints?/g)].flatMap(
      ([, link = "", ends = ""]) => ends.split(" and ").map((end) => ({ axis, place: `${link} ${end}` })),
    );
  });
};

/** The axle once the readings are taken: heights to 1 mm, by tape 5 mm, rates to 10 %. */
const readAxle = (axle: Axle, ways: readonly Way[]): Axle => {
  /** The outer end of an arm is one point: read at one leg it is read at the other. */
  const legsOf = (label: string, end: string): readonly string[] => {
    const arm = axle.links.find((link) => link.label === label)?.arm;
    if (arm === undefined || end === "inner") return [label];
    return axle.links.filter((link) => link.arm === arm).map((link) => link.label);
  };
  const takenAt = (label: string, end: string) => {
    const names = legsOf(label, end).map((leg) => `${leg.toLowerCase()} ${end}`);
    return ways.filter(({ place }) => names.includes(place)).map(({ axis }) => axis);
  };
  const point = (one: HardPoint, label: string, end: string): HardPoint => {
    const axes = takenAt(label, end);
    const [x, y, z] = one.sd;
    return { ...one, sd: [axes.includes(0) ? 0.005 : x, axes.includes(1) ? 0.005 : y, axes.includes(2) ? 0.001 : z] };
  };
  const joint = (one: Joint, label: string, end: string): Joint =>
    ways.some(({ axis, place }) => axis === null && place === `${label.toLowerCase()} ${end}`)
      ? { ...one, rateSdShare: 0.1 }
      : one;
  return {
    ...axle,
    links: axle.links.map((link) => ({
      ...link,
      inner: point(link.inner, link.label, "inner"),
      outer: point(link.outer, link.label, "outer"),
      innerJoint: joint(link.innerJoint, link.label, "inner"),
      outerJoint: joint(link.outerJoint, link.label, "outer"),
    })),
  };
};

describe("the readings that would narrow the figure of a car scaled from silhouettes", () => {
  const sure = tornPlaces(scaled, "left")
    .map((place) => effectAt(scaled, place, torn))
    .filter(({ headline }) => headline.signSure);

  it("are named wherever a figure is printed", () => {
    expect(sure.length).toBeGreaterThan(1);
    for (const { narrows, question } of sure) expect(narrows, question.position).toMatch(/would narrow it most, to /);
  });

  it("leave the band that is promised once they are taken", () => {
    for (const { axle, narrows, question } of sure) {
      const ways = readingsIn(narrows ?? "");
      const count = /^(One|\d+) reading/.exec(narrows ?? "")?.[1];
      expect(ways.length, narrows ?? "").toBe(count === "One" ? 1 : Number(count));
      const read = { ...scaled, [axle]: readAxle(scaled[axle], ways) };
      const after = effectAt(read, question.position, torn).headline;
      const promised = /, to (.+) further/.exec(narrows ?? "")?.[1];
      expect(formatBandSizes(after), question.position).toBe(promised);
    }
  });
});

describe("what the figures of an effect come from", () => {
  it("is every hard point with its coordinates and how it is known, on the asked side", () => {
    const left = effectAt(ouzel, "rear-left/trailing-link/inner-bush", torn);
    const right = effectAt(ouzel, "rear-right/trailing-link/inner-bush", torn);
    const named = (effect: FaultEffect, label: string) => effect.parts.find((part) => part.label === label);
    expect(named(left, "Trailing link, inner end")?.value).toBe("x −2272, y 590.5, z 286.5 mm");
    expect(named(right, "Trailing link, inner end")?.value).toBe("x −2272, y −590.5, z 286.5 mm");
    for (const { label } of ouzel.rear.links)
      for (const end of ["inner", "outer"]) {
        const point = named(left, `${label}, ${end} end`);
        expect(point?.known, `${label} ${end}`).toMatch(/^standard deviation .* mm; (invented|measured)/);
      }
  });

  it("is every rate with its axis, and a point that legs of an arm share once", () => {
    const { parts } = effectAt(ouzel, "rear-left/trailing-link/inner-bush", torn);
    const bush = parts.find(({ kind, label }) => kind === "rate" && label === "Trailing link, inner joint");
    expect(bush?.value).toMatch(/^across \d+ N\/mm, along \d+ N\/mm; axis /);
    expect(bush?.known).toMatch(/^standard deviation \d+ %; invented$/);
    const front = effectAt(ouzel, tornPlaces(ouzel, "left").find((id) => id.startsWith("front")) ?? "", torn);
    const values = front.parts.filter(({ known }) => known !== "taken as exact").map(({ kind, value }) => kind + value);
    const points = values.filter((value) => value.startsWith("point"));
    expect(new Set(points).size).toBe(points.length);
  });
});

describe("a play nobody has measured", () => {
  const place = "rear-left/trailing-link/inner-bush";
  it("is said to be assumed with the figure and its inputs, a measured one is not, and both compute the same", () => {
    const assumed = effectAt(ouzel, place, { kind: "loose", play: 0.001, assumed: true });
    const measured = effectAt(ouzel, place, { kind: "loose", play: 0.001 });
    expect(assumed.headline.value).toBe(measured.headline.value);
    expect(assumed.howSure).toContain("The play of 1.0 mm is assumed");
    expect(measured.howSure).not.toContain("assumed");
    const play = (effect: FaultEffect) => effect.headline.inputs.find(({ label }) => label.startsWith("Play"))?.value;
    expect([play(assumed), play(measured)]).toEqual(["1.0 mm; assumed, not measured", "1.0 mm"]);
  });
});

describe("the thrust line", () => {
  it("is said with the way the car goes, the same as the sentence says", () => {
    for (const place of tornPlaces(ouzel, "left").filter((id) => id.startsWith("rear"))) {
      const { sentence, whatElse } = effectAt(ouzel, place, torn);
      const goes = /The car steps to the (left|right)/.exec(sentence)?.[1];
      const said = /the nose, and the car, goes to the (left|right)/.exec(whatElse)?.[1];
      if (goes !== undefined && whatElse.includes("thrust line")) expect(said, place).toBe(goes);
    }
  });
});
