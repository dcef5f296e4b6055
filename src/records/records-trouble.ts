/** What is wrong with the records or with what was to be kept; the same form as every finding of the program. */
export interface RecordsFinding {
  readonly code: string;
  readonly path: string;
  readonly got: string;
  readonly needed: string;
  readonly hint: string;
}

/** Thrown where records cannot be opened, read or written for a reason a person can do something about. */
export class RecordsTrouble extends Error {
  readonly finding: RecordsFinding;

  constructor(finding: RecordsFinding, cause?: unknown) {
    super(`${finding.code}: ${finding.got}; needed: ${finding.needed}`, { cause });
    this.name = "RecordsTrouble";
    this.finding = finding;
  }
}

/** Said where nothing more fits on the disk. */
export const noSpaceTrouble = (what: string, cause: unknown): RecordsTrouble =>
  new RecordsTrouble(
    {
      code: "no-space",
      path: "",
      got: `${what}, but the disk or the space allowed is full`,
      needed: "free space where the data folder lies",
      hint: "Nothing of it was kept, and everything kept before still is. Make space and send it again.",
    },
    cause,
  );
