import {
  type CarDocument,
  type DocumentBodies,
  type DocumentKind,
  type Look,
  type SettingsDocument,
  type Stage,
  stageOrder,
} from "#casework";
import { metresFromMm } from "#quantity";
import type { Family } from "#vehicle";
import { carsBeingDecided } from "./cars-being-decided.ts";
import { carsBeingTakenIn } from "./cars-being-taken-in.ts";
import { carsBeingWorkedOn } from "./cars-being-worked-on.ts";
import { dayBefore, demoId, momentOf } from "./demo-id.ts";
import type { CarRow, VisitRow } from "./rows.ts";
import { demoSilhouettes } from "./silhouettes.ts";
import { visitLooks } from "./visit-looks.ts";

/** A document of the demo workshop, as a store is asked to save it. */
export type DemoDocument = {
  readonly [K in DocumentKind]: {
    readonly kind: K;
    readonly id: string;
    readonly body: DocumentBodies[K];
    readonly by: string;
    readonly at: string;
  };
}[DocumentKind];

/** A whole invented workshop: settings first, then car after car with its visits. */
export interface DemoWorkshop {
  readonly documents: readonly DemoDocument[];
  readonly looks: readonly Look[];
  /** Car lines from a silhouette, which stand in the workshop's own files. */
  readonly families: readonly Family[];
}

const cars: readonly CarRow[] = [...carsBeingTakenIn, ...carsBeingDecided, ...carsBeingWorkedOn];

const settings: SettingsDocument = {
  workshop: "Quayside Chassis, an invented workshop",
  currency: "EUR",
  labourCentsPerHour: 9400,
  taxShare: 0.21,
  visitCents: 2150,
  units: { distance: "km", length: "mm", torque: "nm", angle: "deg", pressure: "bar" },
  invented: true,
};

/**
 * The demo workshop as it stands on a day; nobody and nothing in it exists.
 * @param today ISO day; dates count back from it, and the same day gives the same ids
 * @param families the demo families, read
 */
export function demoWorkshop(today: string, families: readonly Family[]): DemoWorkshop {
  const silhouettes = demoSilhouettes();
  const lines = new Map([...families, ...silhouettes].map((family) => [family.id, family]));
  const documents: DemoDocument[] = [
    { kind: "settings", id: "shop", body: settings, by: "Underbench", at: momentOf(today, 0) },
  ];
  const looks: Look[] = [];
  for (const [number, row] of cars.entries()) {
    const family = lines.get(row.family);
    if (!family) throw new Error(`the demo car ${row.registration} is of no family: ${row.family}`);
    const first = row.visits[0];
    if (!first) throw new Error(`the demo car ${row.registration} has no visit`);
    const met = dayBefore(today, first.daysAgo);
    const car = demoId(met, 0, 0xca0000 + number);
    documents.push({ kind: "car", id: car, body: carDocument(row), by: first.by, at: momentOf(met, 0) });
    for (const [index, visit] of row.visits.entries()) {
      const day = dayBefore(today, visit.daysAgo);
      const id = demoId(day, 1, 0xf10000 + 16 * number + index);
      looks.push(...visitLooks(visit, { car, visit: id, day, family }, 1 + looks.length));
      documents.push(...visitDocuments(visit, { car, id, day, today }));
    }
  }
  return { documents, looks, families: silhouettes };
}

function carDocument(row: CarRow): CarDocument {
  return {
    registration: row.registration,
    name: row.name,
    year: row.year,
    identityNumber: null,
    owner: row.owner,
    family: row.family,
    variants: (row.variants ?? []).map(([label, choice, known]) => ({ label, choice, known })),
    distanceUnit: "km",
    odometerOffsetKm: 0,
    invented: true,
  };
}

/** Stages before the one a visit stands at; all of them where it is closed. */
function doneBefore(at: VisitRow["at"]): readonly Stage[] {
  const withPage = stageOrder.filter((stage) => stage !== "options");
  return at === "closed" ? withPage : withPage.slice(0, withPage.indexOf(at));
}

/** Minutes into the day at which a visit's later documents were written; after its last look. */
const PLANNED_AT = 420;
const WORKED_AT = 450;

function visitDocuments(
  row: VisitRow,
  of: { readonly car: string; readonly id: string; readonly day: string; readonly today: string },
): DemoDocument[] {
  const { id, day, today } = of;
  const meta = (minutes: number) => ({ id, by: row.by, at: momentOf(day, minutes) });
  const documents: DemoDocument[] = [
    {
      kind: "visit",
      ...meta(1),
      body: {
        car: of.car,
        odometerKm: row.km,
        date: day,
        by: row.by,
        bay: row.bay,
        done: doneBefore(row.at),
        waits: (row.waits ?? []).map(([what, label, since, due]) => ({
          what,
          label,
          since: dayBefore(today, since),
          due: due === null ? null : dayBefore(today, -due),
        })),
        settled: row.readings?.settled ?? null,
        closed: row.at === "closed",
      },
    },
    { kind: "enquiry", ...meta(2), body: row.enquiry },
  ];
  if (row.agreed || row.declined)
    documents.push({
      kind: "plan",
      ...meta(PLANNED_AT),
      body: {
        visits: [
          { label: "Now", odometerKm: row.km },
          { label: "Next service", odometerKm: row.km + 14_000 },
          { label: "Second service", odometerKm: row.km + 28_000 },
        ],
        declined: row.declined ?? [],
        agreed: (row.agreed ?? []).map((remedy) => ({ remedy, by: "the owner", at: momentOf(day, PLANNED_AT) })),
        fixed: [],
        horizonKm: row.km + 36_000,
      },
    });
  if (row.steps)
    documents.push({
      kind: "job-card",
      ...meta(WORKED_AT),
      body: {
        steps: row.steps.map(([step, height, torque], index) => ({
          step,
          doneBy: row.by,
          at: momentOf(day, WORKED_AT + 4 * index),
          hubToArch: height === undefined || height === null ? null : metresFromMm(height),
          torqueNm: torque ?? null,
          note: null,
        })),
      },
    });
  if (row.taught || row.signed)
    documents.push({
      kind: "hand-over",
      ...meta(WORKED_AT + 90),
      body: {
        overrides: [],
        taught: (row.taught ?? []).map(([item, state]) => ({ item, state, by: row.by })),
        signedBy: row.signed ?? null,
        signedAt: row.signed === undefined ? null : momentOf(day, WORKED_AT + 90),
        receivedBy: row.signed === undefined ? null : "the owner",
      },
    });
  return documents;
}
