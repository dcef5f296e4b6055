import { type Door, describeDoor, findDoor, layoutJsonSchema, unknownDoorFinding, visitJsonSchema } from "#contract";
import { formatFindingsJson } from "./format-findings.ts";
import { type ExitStatus, type Terminal, writeLine } from "./terminal.ts";

/** Prints what a calculation says of itself, with the JSON Schemas of its input and output. */
export const printDoorSchema = async (terminal: Terminal, doors: readonly Door[], id: string): Promise<ExitStatus> => {
  const door = findDoor(id, doors);
  if (door === null) {
    await writeLine(terminal.problems, formatFindingsJson([unknownDoorFinding(id, doors)]));
    return 2;
  }
  await writeLine(terminal.output, JSON.stringify(describeDoor(door), null, 2));
  return 0;
};

/** Prints the JSON Schema of a visit file. */
export const printVisitSchema = async (terminal: Terminal): Promise<ExitStatus> => {
  await writeLine(terminal.output, JSON.stringify(visitJsonSchema(), null, 2));
  return 0;
};

/** Prints the JSON Schema of a layout as bodies and joints. */
export const printLayoutSchema = async (terminal: Terminal): Promise<ExitStatus> => {
  await writeLine(terminal.output, JSON.stringify(layoutJsonSchema(), null, 2));
  return 0;
};
