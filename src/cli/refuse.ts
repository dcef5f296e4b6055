import type { Finding } from "#contract";
import { formatFindings, formatFindingsJson } from "./format-findings.ts";
import { type ExitStatus, type Terminal, writeLine } from "./terminal.ts";

/** Says what is wrong with what was given, how many findings there are, and that it was refused; as JSON on standard output. */
export const refuse = async (terminal: Terminal, findings: readonly Finding[], asJson = false): Promise<ExitStatus> => {
  if (asJson) await writeLine(terminal.output, formatFindingsJson(findings));
  else {
    await writeLine(terminal.problems, formatFindings(findings));
    await writeLine(terminal.problems, findings.length === 1 ? "1 finding" : `${findings.length} findings`);
  }
  return 2;
};
