import { type Appraisal, recordedBy } from "#casework";
import type { Finding } from "#contract";
import { printOwnersPage } from "#report";
import { saveNewFile } from "../save-new-file.ts";
import type { LoadedVisit } from "./load-visit.ts";

const dateWords = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" });

/** Writes the owner's page to a file that is not there yet; what keeps it from being written comes back. */
export const saveOwnersPage = async (
  path: string,
  { car, record }: LoadedVisit,
  appraisal: Appraisal,
): Promise<Finding | null> => {
  const bytes = await printOwnersPage({
    family: record.family,
    car,
    visit: { ...record.visit, by: recordedBy(record.visit, record.looks) },
    rates: record.rates,
    words: record.enquiry?.words ?? "",
    appraisal,
    date: dateWords.format(new Date(`${record.visit.date}T00:00:00Z`)),
  });
  return saveNewFile(path, bytes);
};
