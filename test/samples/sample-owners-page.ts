import loadHighs from "highs";
import {
  appraiseVisit,
  createMemory,
  highsSolver,
  type LookContent,
  type PlanDocument,
  recordOfVisit,
  type StoredLook,
} from "#casework";
import { parseFamilyText } from "#contract";
import { demoFamilySheets } from "#demo";
import type { OwnersPageFacts } from "#report";
import type { Family } from "#vehicle";

const ODOMETER_KM = 128_440;
const AT = "2026-03-12T09:00:00Z";
const rates = {
  workshop: "Marden Chassis",
  currency: "EUR",
  labourCentsPerHour: 9000,
  taxShare: 0.19,
  visitCents: 2500,
};

/** The invented saloon of the demo workshop. */
export function sampleSaloon(): Family {
  const parsed = parseFamilyText(JSON.stringify(demoFamilySheets["ouzel-saloon"]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
}

/** What was seen at a place, worst first. */
export const sampleSigns: readonly (readonly [place: string, content: LookContent])[] = [
  ["rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] }],
  ["front-left/lower-arm/ball-joint", { kind: "signs", signs: ["boot-split"] }],
  ["front-left/bar-link", { kind: "signs", signs: ["play-felt"] }],
  ["rear-right/damper/leak", { kind: "signs", signs: ["film-below-seat"] }],
  ["front-right/lower-arm/rear-bush", { kind: "signs", signs: ["oil-trace"] }],
  ["rear-left/pads/thickness", { kind: "signs", signs: ["uneven-wear"] }],
];

const lookOf = (place: string, content: LookContent, sequence: number): StoredLook => ({
  id: `look-${sequence}`,
  car: "car",
  visit: "visit",
  place,
  content,
  loadState: null,
  instrument: null,
  photo: null,
  note: null,
  who: "I. Marden",
  at: AT,
  sequence,
  receivedAt: AT,
  clockOff: false,
});

const solver = highsSolver(await loadHighs());
/** What a fault does is the same on every page of the samples: it is computed once. */
const memory = createMemory();

/** The facts of an owner's page from a true appraisal of an invented visit; every name on it is invented. */
export function sampleOwnersPage(
  family: Family,
  seen: readonly (readonly [place: string, content: LookContent])[],
  change: (plan: PlanDocument) => PlanDocument = (plan) => plan,
): OwnersPageFacts {
  const visit = {
    car: "car",
    odometerKm: ODOMETER_KM,
    date: "2026-03-12",
    by: "I. Marden",
    bay: null,
    done: [],
    waits: [],
    settled: true,
    closed: false,
  };
  const looks = seen.map(([place, content], i) => lookOf(place, content, i + 1));
  const record = { family, rates, visit, enquiry: null, jobCard: null, handOver: null, looks, past: [] };
  const first = appraiseVisit(recordOfVisit({ ...record, plan: null }), solver, memory);
  const plan = change(first.planDocument);
  return {
    family,
    car: {
      registration: "UB 204",
      name: "Ouzel saloon, 2014",
      owner: "P. Wren",
      year: 2014,
      distanceUnit: "km",
      invented: true,
    },
    visit,
    rates,
    words: "",
    appraisal: appraiseVisit(recordOfVisit({ ...record, plan }), solver, memory),
    date: "12 March 2026",
  };
}
