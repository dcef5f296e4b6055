import { type CaseStore, ratesOf, recordOfVisit, type StoredDocument, type VisitRecord } from "#casework";
import { type Finding, parseFamilyText } from "#contract";
import type { FamilyShelf } from "./family-shelf.ts";

/** A visit with its car and everything an appraisal hangs on. */
export interface RecordedVisit {
  readonly car: StoredDocument<"car">;
  readonly visit: StoredDocument<"visit">;
  readonly record: VisitRecord;
}

/** The visit of the same car before this one; null for the first. */
const visitBefore = async (
  cases: CaseStore,
  visit: StoredDocument<"visit">,
): Promise<StoredDocument<"visit"> | null> => {
  const visits = await cases.listVisits(visit.body.car);
  return visits[visits.findIndex(({ id }) => id === visit.id) - 1] ?? null;
};

/** The family a car names; null where none is chosen or it is no longer there. */
const familyOf = async (
  shelf: FamilyShelf,
  id: string | null,
): Promise<{ readonly family: VisitRecord["family"] } | { readonly findings: readonly Finding[] }> => {
  const shelved = id === null ? null : await shelf.load(id);
  return shelved === null ? { family: null } : parseFamilyText(shelved.text);
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
  const before = await visitBefore(cases, visit);
  const record = recordOfVisit({
    family: family.family,
    rates: ratesOf((await cases.loadDocument("settings", "shop"))?.body ?? null),
    visit: visit.body,
    enquiry: (await cases.loadDocument("enquiry", id))?.body ?? null,
    plan: (await cases.loadDocument("plan", id))?.body ?? null,
    jobCard: (await cases.loadDocument("job-card", id))?.body ?? null,
    handOver: (await cases.loadDocument("hand-over", id))?.body ?? null,
    looks: await cases.loadLooks({ visit: id }),
    past: before === null ? [] : await cases.loadLooks({ visit: before.id }),
  });
  return { car, visit, record };
};
