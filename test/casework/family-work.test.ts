import loadHighs from "highs";
import { describe, expect, it } from "vitest";
import { formatFamily, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { highsSolver } from "#engines/planning";
import { type Family, type FamilyWork, familyFromSilhouette, type Position, positionsOf, workOf } from "#vehicle";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { judgePlace } from "../../src/casework/cases/judge-place.ts";
import type { LookContent, SignName, StoredLook } from "../../src/casework/cases/look.ts";
import { groupByPlace } from "../../src/casework/cases/place-looks.ts";
import { deriveRemedies } from "../../src/casework/cases/remedies.ts";
import { gradeOfSign, signsFor } from "../../src/casework/cases/signs.ts";

const solver = highsSolver(await loadHighs());

const demo = Object.entries(demoFamilySheets).map(([id, sheet]): readonly [string, Family] => {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(`${id}: ${JSON.stringify(parsed.findings, null, 2)}`);
  return [id, parsed.family];
});

const silhouette = (
  frontLayout: "five-link" | "double-wishbone" | "strut",
  rearLayout: "five-link" | "trailing-arm",
) => {
  const made = familyFromSilhouette({ frontLayout, rearLayout, drivenAxle: "rear" });
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  return made.family;
};

const cars: readonly (readonly [string, Family])[] = [
  ...demo,
  ...demo.map(([id, family]): readonly [string, Family] => [`${id} with the usual work`, { ...family, work: null }]),
  ["a silhouette of five links and five", silhouette("five-link", "five-link")],
  ["a silhouette of strut and trailing arm", silhouette("strut", "trailing-arm")],
  ["a silhouette of wishbones and five links", silhouette("double-wishbone", "five-link")],
];

function look(place: string, content: LookContent, sequence: number): StoredLook {
  const at = "2031-05-14T09:00:00Z";
  return {
    id: `look-${sequence}`,
    car: "car",
    visit: "visit",
    place,
    content,
    loadState: "standing",
    instrument: null,
    photo: null,
    note: null,
    who: "E. Tarn",
    at,
    sequence,
    receivedAt: at,
    clockOff: false,
  };
}

/** The sign of a kind of position that asks for most, or null where no sign asks for anything. */
function worstSign(position: Position): SignName | null {
  const graded = signsFor(position.kind).map((sign) => ({ sign, grade: gradeOfSign(position.kind, sign) ?? 0 }));
  const worst = graded.reduce((a, b) => (b.grade > a.grade ? b : a));
  return worst.grade > 0 ? worst.sign : null;
}

const worstLooks = (positions: readonly Position[]): StoredLook[] =>
  positions.flatMap((position, index) => {
    const sign = worstSign(position);
    return sign ? [look(position.id, { kind: "signs", signs: [sign] }, index)] : [];
  });

const judged = (positions: readonly Position[], looks: readonly StoredLook[], work: FamilyWork) => {
  const places = groupByPlace(looks);
  return positions.map((position) =>
    judgePlace(places.get(position.id) ?? null, {
      position,
      limits: work.limits,
      twin: null,
      past: null,
      confidence: 0.95,
    }),
  );
};

const nothingDecided = { declined: [], agreed: [], fixed: [] };

describe("remedies on file", () => {
  it.each(cars)("of %s cure the worst sign of every position at once", (_, family) => {
    const work = workOf(family);
    const positions = positionsOf(family);
    const { remedies, uncured } = deriveRemedies(work, judged(positions, worstLooks(positions), work), nothingDecided);
    expect(uncured.map(({ place }) => place)).toEqual([]);
    expect(remedies.length).toBeGreaterThan(20);
    for (const remedy of remedies) {
      expect(remedy.operations.length).toBeGreaterThan(0);
      expect(remedy.parts.filter(({ part }) => !work.parts.some(({ id }) => id === part))).toEqual([]);
    }
  });

  it.each(cars)("of %s cure what a limit can raise where no sign is", (_, family) => {
    const places = positionsOf(family).map(({ item, detail }) => (detail === null ? item : `${item}/${detail}`));
    const cured = new Set(workOf(family).remedies.flatMap(({ cures }) => cures));
    expect(places.filter((place) => !cured.has(place))).toEqual([]);
  });

  it.each(cars)("of %s carry a visit from a look to steps and a price", (_, family) => {
    const work = workOf(family);
    const some = positionsOf(family).filter(
      ({ kind, side }) => side !== "right" && ["bar-link", "hose"].includes(kind),
    );
    const rates = { workshop: "Invented", currency: "EUR", labourCentsPerHour: 9600, taxShare: 0.2, visitCents: 1900 };
    const visit = {
      car: "car",
      odometerKm: 92_000,
      date: "2031-05-14",
      by: "E. Tarn",
      bay: null,
      done: [],
      waits: [],
      settled: true,
      closed: false,
    };
    const nothing = { enquiry: null, plan: null, jobCard: null, handOver: null, past: [] };
    const first = appraiseVisit({ family, work, rates, visit, ...nothing, looks: worstLooks(some) }, solver);
    expect(first.uncured).toEqual([]);
    expect(first.plan.status).toBe("optimal");
    const agreed = first.remedies.map(({ id }) => ({ remedy: id, by: "owner", at: visit.date }));
    const plan = { ...first.planDocument, agreed };
    const second = appraiseVisit({ family, work, rates, visit, ...nothing, plan, looks: worstLooks(some) }, solver);
    expect(second.jobCard.steps.length).toBeGreaterThan(4);
    const complete = second.plan.remedies.map(({ priceComplete }) => priceComplete);
    expect(complete).toEqual(complete.map(() => work.origin === "family"));
  });
});

describe("the work of the demo families", () => {
  it.each(demo)("%s comes back the same from its sheet, to the double", (_, family) => {
    expect(parseFamily(JSON.parse(JSON.stringify(formatFamily(family))))).toEqual({ family });
  });

  it.each(demo)("%s says of everything that it is invented, and of every limit whose it is", (_, family) => {
    const work = workOf(family);
    expect(work.origin).toBe("family");
    const sources = [work.limits, work.alignment, work.operations, work.operations.flatMap((o) => o.fasteners)].flat();
    for (const { source } of sources) expect(source).toMatch(/^invented/);
    expect(new Set(work.limits.map(({ owner }) => owner)).size).toBe(5);
    for (const { owner, grade } of work.limits)
      if (owner === "practice" || owner === "memory") expect(grade).toBeLessThanOrEqual(2);
  });

  it.each(demo)(
    "%s has weak points, targets for both axles with their heights, blanks and one-time bolts",
    (_, family) => {
      const work = workOf(family);
      expect(work.knownFaults.length).toBeGreaterThanOrEqual(2);
      expect(work.knownFaults.length).toBeLessThanOrEqual(5);
      expect(work.alignment.map(({ axle }) => axle)).toEqual(["front", "rear"]);
      for (const { hubToArch } of work.alignment) expect(hubToArch).toBeGreaterThan(0.3);
      expect(work.parts.some(({ priceCents }) => priceCents === null)).toBe(true);
      const uses = work.operations.flatMap((operation) => operation.fasteners);
      expect(uses.some(({ stages }) => stages === null)).toBe(true);
      expect(uses.filter(({ policy }) => policy === "always-new").length).toBeGreaterThan(10);
      const loaded = work.operations.filter((o) => o.fasteners.some((f) => f.atRideHeight));
      expect(loaded.length).toBeGreaterThan(2);
    },
  );
});
