import { writeFile } from "node:fs/promises";
import { type Appraisal, recordedBy } from "#casework";
import type { Finding } from "#contract";
import { printOwnersPage } from "#report";
import type { LoadedVisit } from "./load-visit.ts";

const dateWords = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" });

const words: Readonly<Record<string, string>> = {
  EEXIST: "a file that is there already",
  ENOENT: "a folder that is not there",
  EISDIR: "a folder",
  EACCES: "a place that may not be written",
  EROFS: "a disk that is only read",
  ENOSPC: "a disk that is full",
};

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
  try {
    await writeFile(path, bytes, { flag: "wx" });
    return null;
  } catch (problem) {
    const code = problem instanceof Error && "code" in problem ? String(problem.code) : "";
    const got = words[code];
    if (got === undefined) throw problem;
    return {
      code: code === "EEXIST" ? "file-exists" : code === "ENOSPC" ? "no-space" : "no-file",
      path: "",
      got: `${got}: ${path}`,
      needed: "the name of a file that is not there yet",
      hint: "",
    };
  }
};
