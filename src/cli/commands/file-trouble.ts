import type { Finding } from "#contract";
import { RecordsTrouble } from "#records";
import { formatFindings } from "../format-findings.ts";
import { type ExitStatus, type Terminal, writeLine } from "../terminal.ts";

const words: Readonly<Record<string, string>> = {
  ENOENT: "no such file or folder",
  ENOTDIR: "a path through something that is no folder",
  EISDIR: "a folder where a file was expected",
  EACCES: "a place that may not be read or written",
  EPERM: "a place that may not be read or written",
  EROFS: "a disk that is only read",
};

const noSpaceCodes = new Set(["ENOSPC", "EDQUOT"]);

const noSpace: Finding = {
  code: "no-space",
  path: "",
  got: "a disk that is full",
  needed: "free space for what is written",
  hint: "What was not finished is not to be used. Make space and run it again.",
};

/** What is wrong where it is something a person can do something about; null for a fault of ours. */
const findingOf = (problem: unknown): Finding | null => {
  if (problem instanceof RecordsTrouble) return problem.finding;
  if (!(problem instanceof Error && "code" in problem)) return null;
  const code = String(problem.code);
  if (noSpaceCodes.has(code)) return noSpace;
  const got = words[code];
  if (got === undefined) return null;
  const place = "path" in problem ? `: ${String(problem.path)}` : "";
  return { code: "no-file", path: "", got: got + place, needed: "a file or folder that can be used", hint: "" };
};

/** Lists findings among the problems; the command ends with 2. */
export const refuseWith = async (terminal: Terminal, findings: readonly Finding[]): Promise<ExitStatus> => {
  await writeLine(terminal.problems, formatFindings(findings));
  return 2;
};

/** Runs a command; what a person can do something about ends it with findings and 2. */
export const orRefuse = async (terminal: Terminal, run: () => Promise<ExitStatus>): Promise<ExitStatus> => {
  try {
    return await run();
  } catch (problem) {
    const finding = findingOf(problem);
    if (finding === null) throw problem;
    return refuseWith(terminal, [finding]);
  }
};

/** Said of a data folder that is not there. */
export const noRecords = (folder: string): Finding => ({
  code: "no-file",
  path: "",
  got: `no data folder: ${folder}`,
  needed: "the folder the program keeps its records in",
  hint: "Name it with --data, or set DATA_DIR.",
});
