import { noSpaceTrouble, RecordsTrouble } from "../records-trouble.ts";

const codeOf = (problem: unknown): string =>
  problem instanceof Error && "code" in problem && typeof problem.code === "string" ? problem.code : "";

/** Said of a database that is not whole. */
export const damagedTrouble = (what: string, cause?: unknown): RecordsTrouble =>
  new RecordsTrouble(
    {
      code: "records-damaged",
      path: "",
      got: what,
      needed: "the whole database file, with its write-ahead log beside it",
      hint: "Nothing was changed. Copy the data folder away, then restore the newest backup into an empty one (underbench restore); what can still be read comes out by underbench export --salvage.",
    },
    cause,
  );

const busyTrouble = (cause: unknown): RecordsTrouble =>
  new RecordsTrouble(
    {
      code: "records-busy",
      path: "",
      got: "records another program is writing to",
      needed: "a turn at writing within a few seconds",
      hint: "Nothing of it was kept. Wait until the other one (an import, a restore) is done and send it again.",
    },
    cause,
  );

const notWritable = (cause: unknown): RecordsTrouble =>
  new RecordsTrouble(
    {
      code: "records-not-writable",
      path: "",
      got: "a disk or folder that does not take what is written",
      needed: "a data folder on a working disk that may be written to",
      hint: "Nothing of it was kept. Look at the disk and at who may write to the data folder.",
    },
    cause,
  );

/** What is wrong, where it is something a person can do something about; null where it is a fault of ours. */
export const sqliteTrouble = (problem: unknown): RecordsTrouble | null => {
  const code = codeOf(problem);
  if (code.startsWith("SQLITE_FULL")) return noSpaceTrouble("a record to keep", problem);
  if (code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_LOCKED")) return busyTrouble(problem);
  if (code.startsWith("SQLITE_CORRUPT")) return damagedTrouble("a database file that is not whole", problem);
  if (code.startsWith("SQLITE_NOTADB")) return damagedTrouble("a file that is no database", problem);
  if (/^SQLITE_(IOERR|READONLY|CANTOPEN|PERM|AUTH)/.test(code)) return notWritable(problem);
  return null;
};
