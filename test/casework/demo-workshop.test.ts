import loadHighs from "highs";
import { describe, expect, it } from "vitest";
import type { DocumentBodies, DocumentKind, Look, StageMark, StoredLook } from "#casework";
import { appraiseVisit, standardReadings, symptoms } from "#casework";
import {
  checkDocumentId,
  formatBody,
  formatFamily,
  formatLook,
  parseFamily,
  parseLookBatch,
  parseSentDocument,
} from "#contract";
import { type DemoDocument, demoFamilies, demoWorkshop } from "#demo";
import { highsSolver } from "#engines/planning";
import { positionsOf, workOf } from "#vehicle";

const solver = highsSolver(await loadHighs());
const today = "2031-05-14";
const families = demoFamilies(parseFamily);
const workshop = demoWorkshop(today, families);
const lines = new Map([...families, ...workshop.families].map((family) => [family.id, family]));

type Of<K extends DocumentKind> = Extract<DemoDocument, { readonly kind: K }>;
const ofKind = <K extends DocumentKind>(kind: K): Of<K>[] =>
  workshop.documents.filter((document): document is Of<K> => document.kind === kind);
const bodyOf = <K extends DocumentKind>(kind: K, id: string): DocumentBodies[K] | null =>
  (ofKind(kind).find((document) => document.id === id)?.body as DocumentBodies[K] | undefined) ?? null;

const cars = ofKind("car");
const visits = ofKind("visit");
const stored = (look: Look, sequence: number): StoredLook => ({
  ...look,
  sequence,
  receivedAt: look.at,
  clockOff: false,
});
const looksOf = (visit: string): StoredLook[] => workshop.looks.filter((look) => look.visit === visit).map(stored);
const lastVisitOf = (car: string) => {
  const last = visits.filter(({ body }) => body.car === car).at(-1);
  if (!last) throw new Error(`no visit of ${car}`);
  return last;
};
const familyOf = (car: string) => {
  const family = lines.get(bodyOf("car", car)?.family ?? "");
  if (!family) throw new Error(`no family of ${car}`);
  return family;
};

function appraise(visit: Of<"visit">) {
  const family = familyOf(visit.body.car);
  const settings = bodyOf("settings", "shop");
  if (!settings) throw new Error("no settings");
  const before = visits.filter(({ body, id }) => body.car === visit.body.car && id !== visit.id).at(-1);
  return appraiseVisit(
    {
      family,
      work: workOf(family),
      rates: settings,
      visit: visit.body,
      enquiry: bodyOf("enquiry", visit.id),
      plan: bodyOf("plan", visit.id),
      jobCard: bodyOf("job-card", visit.id),
      handOver: bodyOf("hand-over", visit.id),
      looks: looksOf(visit.id),
      past: before ? looksOf(before.id) : [],
    },
    solver,
  );
}

/** Where a car stands: the first stage with a page that is not done, or closed. */
const standsAt = (visit: Of<"visit">, stages: readonly StageMark[]): string =>
  visit.body.closed
    ? "closed"
    : (stages.find(({ stage, mark }) => stage !== "options" && mark !== "done")?.stage ?? "");

describe("the demo workshop", () => {
  it("is twelve cars over three families and two silhouettes, most with earlier visits, and sixty parts and sets or more", () => {
    expect(cars.length).toBe(12);
    expect(new Set(cars.map(({ body }) => body.family))).toEqual(new Set(lines.keys()));
    expect(workshop.families.length).toBe(2);
    expect(visits.length - cars.length).toBeGreaterThanOrEqual(6);
    const stock = families.flatMap((family) => workOf(family).parts);
    expect(stock.filter(({ kind }) => kind === "part" || kind === "set").length).toBeGreaterThanOrEqual(60);
    expect(stock.filter(({ kind }) => kind === "set").length).toBeGreaterThanOrEqual(6);
  });

  it("is invented, and says so of every car, family and the workshop itself", () => {
    for (const { body } of cars) expect(body.invented).toBe(true);
    expect(bodyOf("settings", "shop")?.invented).toBe(true);
    for (const family of lines.values())
      expect([family.invented, family.note]).toEqual([true, expect.stringMatching(/^Invented/)]);
  });

  it("is the same every time on a day, with ids that are versions 7 and never meet", () => {
    expect(demoWorkshop(today, families)).toEqual(workshop);
    const ids = [...cars, ...visits].map(({ id }) => id).concat(workshop.looks.map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it("has each document and look in the form they are sent in", () => {
    for (const { kind, id, by, body } of workshop.documents) {
      expect(checkDocumentId(kind, id)).toEqual([]);
      const sent = JSON.stringify({ by, document: formatBody(kind, body) });
      expect(parseSentDocument(kind, sent)).toEqual({ value: { by, body, confirmed: false } });
    }
    for (let from = 0; from < workshop.looks.length; from += 500) {
      const some = workshop.looks.slice(from, from + 500);
      const read = parseLookBatch(JSON.stringify({ looks: some.map(formatLook) }));
      expect("value" in read ? read.value : read.findings).toEqual(some.map((look) => ({ look })));
    }
    for (const family of workshop.families)
      expect(parseFamily(JSON.parse(JSON.stringify(formatFamily(family))))).toEqual({ family });
  });

  it("looks only at places its cars have, and its complaints stand in the list", () => {
    const standard = new Set(standardReadings().map(({ place }) => place));
    for (const { place, car } of workshop.looks) {
      const known = new Set(positionsOf(familyOf(car)).map(({ id }) => id));
      expect(known.has(place) || standard.has(place) ? place : `${place} is nowhere`).toBe(place);
    }
    const known = new Set(symptoms.map(({ id }) => id));
    const complaints = ofKind("enquiry").flatMap(({ body }) => body.symptoms.map(({ symptom }) => symptom));
    expect(complaints.filter((id) => !known.has(id))).toEqual([]);
    expect(complaints.length).toBeGreaterThan(8);
  });

  it("never runs an odometer backward, and keeps a car's visits in the order of their days", () => {
    for (const car of cars) {
      const own = visits.filter(({ body }) => body.car === car.id);
      const km = own.map(({ body }) => body.odometerKm ?? 0);
      expect(km).toEqual([...km].sort((a, b) => a - b));
      expect(own.map(({ body }) => body.date)).toEqual(own.map(({ body }) => body.date).sort());
    }
  });

  it("has a wait of each kind", () => {
    const kinds = visits.flatMap(({ body }) => body.waits.map(({ what }) => what));
    expect(new Set(kinds)).toEqual(new Set(["part", "owner", "stand", "person"]));
  });
});

describe("the cars of the demo workshop, appraised", () => {
  const appraised = cars.map(({ id, body }) => {
    const visit = lastVisitOf(id);
    return { registration: body.registration, visit, appraisal: appraise(visit) };
  });

  it("stand in every stage that has a page, nothing blocked there, and one is gone", () => {
    const at = appraised.map(({ visit, appraisal }) => standsAt(visit, appraisal.stages));
    expect(new Set(at)).toEqual(
      new Set(["enquiry", "car", "readings", "underside", "findings", "plan", "job-card", "hand-over", "closed"]),
    );
    for (const { visit, appraisal, registration } of appraised) {
      const stage = standsAt(visit, appraisal.stages);
      const mark = appraisal.stages.find((one) => one.stage === stage);
      if (stage !== "hand-over" && mark) expect(`${registration} ${mark.blockedBy}`).toBe(`${registration} `);
    }
  });

  it("leave no finding without a remedy, and agree to remedies that are there and planned now", () => {
    for (const { appraisal, registration } of appraised) {
      expect(appraisal.uncured.map(({ place }) => `${registration} ${place}`)).toEqual([]);
      const now = appraisal.plan.remedies.filter(({ visit }) => visit === 0).map(({ remedy }) => remedy.id);
      for (const { remedy } of appraisal.planDocument.agreed) expect(now).toContain(remedy);
    }
  });

  it("sign only steps that stand on their job cards; a closed one has them all", () => {
    for (const { visit, appraisal, registration } of appraised) {
      const steps = appraisal.jobCard.steps.map(({ id }) => id);
      const signed = bodyOf("job-card", visit.id)?.steps.map(({ step }) => `${registration} ${step}`) ?? [];
      const known = steps.map((step) => `${registration} ${step}`);
      expect(signed.filter((step) => !known.includes(step))).toEqual([]);
      const open = appraisal.gates.filter(({ state }) => state === "open").map(({ id }) => `${registration} ${id}`);
      if (visit.body.closed) expect(open).toEqual([]);
    }
  });

  it("show what the program is for: a finding of every grade but the worst, and one too near to call", () => {
    const findings = appraised.flatMap(({ appraisal }) => appraisal.findings);
    for (const grade of [0, 1, 2, 3] as const) expect(findings.some((f) => f.grade === grade)).toBe(true);
    expect(findings.some(({ effect }) => effect !== null)).toBe(true);
    expect(findings.some(({ closeToCall }) => closeToCall)).toBe(true);
  });
});
