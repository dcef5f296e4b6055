import { type CaseStore, looksBefore, ratesOf, recordOfVisit, type StoredDocument, type VisitRecord } from "#casework";
import { type Finding, parseKeptFamilyText } from "#contract";
import type { FamilyShelf } from "./family-shelf.ts";

/** A visit with its car and everything an appraisal hangs on. */
export interface RecordedVisit {
  readonly car: StoredDocument<"car">;
  readonly visit: StoredDocument<"visit">;
  readonly record: VisitRecord;
}

/** The visits of the same car before this one, oldest first. */
const visitsBefore = async (
  cases: CaseStore,
  visit: StoredDocument<"visit">,
): Promise<readonly StoredDocument<"visit">[]> => {
  const visits = await cases.listVisits(visit.body.car);
  return visits.slice(
    0,
    visits.findIndex(({ id }) => id === visit.id),
  );
};

/** The family a car names; null where none is chosen or it is no longer there. */
const familyOf = async (
  shelf: FamilyShelf,
  id: string | null,
): Promise<{ readonly family: VisitRecord["family"] } | { readonly findings: readonly Finding[] }> => {
  const shelved = id === null ? null : await shelf.load(id);
  return shelved === null ? { family: null } : parseKeptFamilyText(shelved.text);
};

/** Everything on record about a visit, as the pages appraise it; null where there is no such visit. */
export const loadRecordedVisit = async (
  cases: CaseStore,
  shelf: FamilyShelf,
  id: string,
): Promise<RecordedVisit | { readonly findings: readonly Finding[] } | null> => {
  const visit = await cases.loadDocument("visit", id);
  const car = visit === null ? null : await cases.loadDocument("car", visit.body.car);
  if (visit === null || car === null) return null;
  const family = await familyOf(shelf, car.body.family);
  if ("findings" in family) return family;
  const before = await visitsBefore(cases, visit);
  const record = recordOfVisit({
    family: family.family,
    rates: ratesOf((await cases.loadDocument("settings", "shop"))?.body ?? null),
    visit: visit.body,
    enquiry: (await cases.loadDocument("enquiry", id))?.body ?? null,
    plan: (await cases.loadDocument("plan", id))?.body ?? null,
    jobCard: (await cases.loadDocument("job-card", id))?.body ?? null,
    handOver: (await cases.loadDocument("hand-over", id))?.body ?? null,
    looks: await cases.loadLooks({ visit: id }),
    past: before.length === 0 ? [] : looksBefore(await cases.loadLooks({ car: car.id }), before),
  });
  return { car, visit, record };
};
