import { describe, expect, it } from "vitest";
import { type CornerMatch, computeMatch, type MatchAsked, takeOverMatch } from "#casework";
import { formatFamily, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { TravelSweep } from "#engines/linkage";
import { normalFrom, seededRandom } from "#numeric";
import { radiansFromDegrees } from "#quantity";
import { assembleCorner, type Corner, type Family, familyFromSilhouette } from "#vehicle";
import { modelOfAssembly } from "../../src/casework/fault/corner-model.ts";
import { disturbCorner } from "../../src/casework/sampling/disturb-corner.ts";

const demo = (id: string): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const scaled = (() => {
  const made = familyFromSilhouette({ name: "Unknown", frontLayout: "strut", rearLayout: "five-link" });
  if ("findings" in made) throw new Error("no family");
  return made.family;
})();

const HEIGHTS = [-0.05, -0.025, 0, 0.025, 0.05];
const u = {
  travel: 0.0005,
  camber: radiansFromDegrees(0.02),
  toe: radiansFromDegrees(0.01),
  length: 0.0005,
  heightBase: 0,
  bodyBase: 0,
};

/** Angles of a car whose points are drawn from the deviations on file. */
function readingsOf(family: Family, corner: Corner, seed: number, heights = HEIGHTS) {
  const drawn = disturbCorner(assembleCorner(family, corner), normalFrom(seededRandom(seed)));
  const sweep = new TravelSweep(modelOfAssembly(drawn).geometry);
  const at = (travel: number) => {
    const position = sweep.solve({ travel, rack: 0 });
    if ("foldAt" in position) throw new Error("folds");
    return position.attitude;
  };
  const rest = at(0);
  return {
    change: (travel: number) => at(travel).toe - rest.toe,
    readings: heights.map((travel) => ({ travel, camber: at(travel).camber, toe: at(travel).toe })),
  };
}

const matchOf = (asked: MatchAsked): CornerMatch => {
  const answer = computeMatch(asked);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.match;
};
const truth = readingsOf(scaled, "rear-left", 5);
const asked: MatchAsked = { family: scaled, corner: "rear-left", readings: truth.readings, lengths: [], u };
const match = matchOf(asked);
const scaledBy = (k: number, [x, y, z]: readonly [number, number, number]) => [k * x, k * y, k * z] as const;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

describe("a car line matched to one car's readings", { timeout: 60_000 }, () => {
  it("makes figures printable that were not, and holds what the car really does in their bands", () => {
    const became = match.figures.filter(({ before, after }) => !before.signSure && after.signSure);
    expect(became.length).toBeGreaterThan(0);
    for (const { after } of became) expect(match.sentence).toContain(after.label.slice(1));
    for (const [key, travel] of [
      ["toe-bump-matched", 0.05],
      ["toe-droop-matched", -0.05],
    ] as const) {
      const figure = match.figures.find(({ after }) => after.key === key)?.after;
      const real = degrees(truth.change(travel));
      expect(figure?.band?.[0] ?? Number.NaN).toBeLessThan(real);
      expect(figure?.band?.[1] ?? Number.NaN).toBeGreaterThan(real);
    }
    for (const { before, after } of match.figures) expect(after.u).toBeLessThan(before.u);
  });

  it("names the coordinates a figure is owed to by falling share, and says how much is left of each", () => {
    for (const { owedTo } of match.figures) {
      expect(owedTo.length).toBeGreaterThan(0);
      const shares = owedTo.map(({ share }) => share);
      expect(shares).toEqual(shares.toSorted((a, b) => b - a));
      for (const { sdAfter, sdBefore } of owedTo) expect(sdAfter).toBeLessThanOrEqual(sdBefore * (1 + 1e-9));
    }
    expect(match.undetermined).toMatch(
      /^The readings settle \d+\.\d independent combinations of \d+ coordinates; \d+ /,
    );
  });

  it("takes a length from the bench in", () => {
    const link = assembleCorner(scaled, "rear-left").links[0];
    if (!link) throw new Error("no link");
    const length = Math.hypot(...link.inner.at.map((x, i) => x - (link.outer.at[i] as number))) + 0.004;
    const longer = matchOf({ ...asked, lengths: [{ link: link.name, length }] });
    const row = longer.readings.find(({ words }) => words.endsWith("pin to pin"));
    expect(row?.observed).toBe(`${(length * 1000).toFixed(1)} mm`);
    expect(Math.abs(Number.parseFloat(row?.fitted ?? "") - length * 1000)).toBeLessThan(1);
  });

  it("names the reading that contradicts the others, also where no points explain it", () => {
    const ouzel = demo("ouzel-saloon");
    const own = readingsOf(ouzel, "front-left", 9);
    const slipped = (read: typeof own, by: number) =>
      read.readings.map((one, i) => (i === 3 ? { ...one, toe: one.toe + radiansFromDegrees(by) } : one));
    const wrong = matchOf({ ...asked, family: ouzel, corner: "front-left", readings: slipped(own, 0.2) });
    expect(match.contradicting).toBeNull();
    expect(wrong.contradicting).toContain("Toe at 25 mm of bump");
    expect(wrong.sentence).toMatch(/, but (one reading contradicts|\d readings contradict) the others: /);
    expect(wrong.sentence).not.toContain("printable");
    const far = computeMatch({ ...asked, readings: slipped(truth, 2) });
    expect("findings" in far && far.findings).toMatchObject([{ code: "not-consistent", path: "readings[3].toe" }]);
    expect(wrong.contradicting).not.toContain("template");
  });

  it("says on a template that it may be the template that is wrong", () => {
    const far = computeMatch({
      ...asked,
      readings: truth.readings.map((one, i) => (i === 3 ? { ...one, toe: one.toe + 0.035 } : one)),
    });
    expect("findings" in far && far.findings[0]?.hint).toContain("it is the template that does not fit this car");
    const bent = truth.readings.map((one) => ({ ...one, camber: one.camber + 40 * one.travel ** 2 }));
    const answer = computeMatch({ ...asked, readings: bent });
    const words = "match" in answer ? `${answer.match.sentence} ${answer.match.contradicting}` : JSON.stringify(answer);
    expect(words).toContain("it is the template that does not fit this car");
  });

  it("is taken over as a copy that reads back, its axle on the rung matched, everything else as it was", () => {
    for (const [family, corner] of [
      [scaled, "rear-left"],
      [demo("dunlin-hatch"), "front-right"],
      [demo("dunlin-hatch"), "rear-left"],
      [demo("ouzel-saloon"), "front-left"],
    ] as const) {
      const { readings } = readingsOf(family, corner, 9, [-0.04, 0, 0.04]);
      const found = matchOf({ ...asked, family, corner, readings });
      const copy = takeOverMatch(family, found, { id: "one-car", name: "One car" });
      const parsed = parseFamily(formatFamily(copy));
      if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
      const [axle, other] = corner.startsWith("front") ? (["front", "rear"] as const) : (["rear", "front"] as const);
      expect(parsed.family[axle].rung).toBe("matched");
      expect(copy[other]).toEqual(family[other]);
      expect([copy.id, copy.name, copy.invented]).toEqual(["one-car", "One car", family.invented]);
      const moved = assembleCorner(copy, `${axle}-left`);
      for (const { name, at, sd } of found.points) {
        const point = moved.points.find((one) => one.name === name);
        expect([...(point?.at ?? [])], name).toEqual([...at]);
        expect([...(point?.sd ?? [])], name).toEqual([...sd]);
      }
    }
  });

  it("keeps in the copy how the points hang together: its bands are those of the match, and a second match knows it", () => {
    const copy = takeOverMatch(scaled, match, { id: "one-car", name: "One car" });
    const parsed = parseFamily(JSON.parse(JSON.stringify(formatFamily(copy))));
    if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
    const again = matchOf({ ...asked, family: parsed.family, u: { ...u, camber: 0.2, toe: 0.2 } });
    const { correlation: _, ...alone } = parsed.family.rear;
    const bare = matchOf({
      ...asked,
      family: { ...parsed.family, rear: alone },
      u: { ...u, camber: 0.2, toe: 0.2 },
    });
    match.figures.forEach(({ after }, i) => {
      const { before, after: second } = again.figures[i] ?? { before: { u: 0 }, after: { u: 0 } };
      expect(before.u / after.u, after.key).toBeCloseTo(1, 5);
      // Readings of no worth leave everything as it was known.
      expect(second.u / after.u, after.key).toBeCloseTo(1, 3);
      expect(bare.figures[i]?.before.u ?? 0, after.key).toBeGreaterThan(after.u);
    });
  });

  it("draws corners from the copy as the match foresees them", () => {
    const copy = takeOverMatch(scaled, match, { id: "one-car", name: "One car" });
    const toe = match.figures.find(({ after }) => after.key === "toe-gain-matched")?.after;
    const draw = normalFrom(seededRandom(3));
    const drawn = assembleCorner(copy, "rear-left");
    // Small enough for first derivatives.
    const points = drawn.points.map((point) => ({ ...point, sd: scaledBy(0.02, point.sd) }));
    const assembly = { ...drawn, points };
    const gains = Array.from({ length: 300 }, () => {
      const sweep = new TravelSweep(modelOfAssembly(disturbCorner(assembly, draw)).geometry);
      const [up, down] = [sweep.solve({ travel: 0.002, rack: 0 }), sweep.solve({ travel: -0.002, rack: 0 })];
      return "foldAt" in up || "foldAt" in down ? 0 : degrees(up.attitude.toe - down.attitude.toe) / 0.004;
    });
    const mean = gains.reduce((sum, x) => sum + x, 0) / gains.length;
    const sd = Math.sqrt(gains.reduce((sum, x) => sum + (x - mean) ** 2, 0) / gains.length);
    expect(sd / (0.02 * (toe?.u ?? 0))).toBeGreaterThan(0.85);
    expect(sd / (0.02 * (toe?.u ?? 0))).toBeLessThan(1.15);
  });

  it("knows less where all heights share an error, and where the points of the body do", () => {
    const of = (change: Partial<MatchAsked["u"]>) => matchOf({ ...asked, u: { ...u, ...change } }).figures;
    const [alone, tall] = [of({}), of({ heightBase: 0.01 })];
    const key = "camber-gain-matched";
    const spread = (figures: CornerMatch["figures"]) => figures.find(({ after }) => after.key === key)?.after.u ?? 0;
    expect(spread(tall)).toBeGreaterThan(spread(alone));
    // The deviations on file stay what they are; a part of them is common, and so cannot bend a link.
    const common = of({ bodyBase: 0.012 });
    expect(common.map(({ before }) => before.u)).toEqual(alone.map(({ before }) => before.u));
    expect(common.map(({ after }) => after.u)).not.toEqual(alone.map(({ after }) => after.u));
  });

  it("is refused with fewer than three heights, beyond the stops, and for a length of another link, all at once", () => {
    const codes = (change: Partial<MatchAsked>) => {
      const answer = computeMatch({ ...asked, ...change });
      return "findings" in answer ? answer.findings.map(({ code, path }) => `${code} ${path}`) : [];
    };
    expect(codes({ readings: truth.readings.slice(0, 2) })).toEqual(["wrong-length readings"]);
    const twice = truth.readings.slice(0, 1).concat(truth.readings.slice(0, 2));
    expect(codes({ readings: twice })).toEqual(["wrong-length readings"]);
    const high = { travel: 0.4, camber: 0, toe: null };
    const lengths = [
      { link: "spring-link", length: 3 },
      { link: "nothing", length: 0.3 },
    ];
    expect(codes({ readings: [...truth.readings, high], lengths })).toEqual([
      "out-of-range readings[5].travel",
      "out-of-range lengths[0].length",
      "unknown-link lengths[1].link",
    ]);
  });
});
