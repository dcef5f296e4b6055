import { familyJsonSchema, parseFamilyText } from "#contract";
import { formatFindingsJson } from "./format-findings.ts";
import { readFileText } from "./read-input.ts";
import { refuse } from "./refuse.ts";
import { type ExitStatus, type Terminal, writeLine } from "./terminal.ts";

/** Checks a family sheet: one line about it, or every finding with its hint. */
export const checkFamilyFile = async (terminal: Terminal, path: string, asJson: boolean): Promise<ExitStatus> => {
  const read = await readFileText(path, terminal.input);
  const parsed = "findings" in read ? read : parseFamilyText(read.text);
  if ("findings" in parsed) return refuse(terminal, parsed.findings, asJson);
  const { family } = parsed;
  const layouts = `${family.front.layout} front, ${family.rear.layout} rear`;
  await writeLine(
    terminal.output,
    asJson ? formatFindingsJson([]) : `${family.name}: ${layouts}. Nothing to object to.`,
  );
  return 0;
};

/** Prints the JSON Schema of a family sheet. */
export const printFamilySchema = async (terminal: Terminal): Promise<ExitStatus> => {
  await writeLine(terminal.output, JSON.stringify(familyJsonSchema(), null, 2));
  return 0;
};
