import { type Family, type FamilyWork, type ShopRates, workOf } from "#vehicle";
import type { EnquiryDocument, HandOverDocument, JobCardDocument, PlanDocument, VisitDocument } from "./documents.ts";
import type { StoredLook } from "./look.ts";

/** Everything on record that an appraisal of one visit hangs on. */
export interface VisitRecord {
  readonly family: Family | null;
  readonly work: FamilyWork;
  readonly rates: ShopRates;
  readonly visit: VisitDocument;
  readonly enquiry: EnquiryDocument | null;
  readonly plan: PlanDocument | null;
  readonly jobCard: JobCardDocument | null;
  readonly handOver: HandOverDocument | null;
  readonly looks: readonly StoredLook[];
  /** Looks of the car's visits before this one; the last of each place counts. */
  readonly past: readonly StoredLook[];
}

const noWork: FamilyWork = {
  origin: "usual",
  limits: [],
  access: [],
  operations: [],
  remedies: [],
  parts: [],
  knownFaults: [],
  alignment: [],
};

/** The record of a visit with what its family knows of work; without a family nothing is known. */
export const recordOfVisit = (onRecord: Omit<VisitRecord, "work">): VisitRecord => ({
  ...onRecord,
  work: onRecord.family === null ? noWork : workOf(onRecord.family),
});
