import {
  askDoorReading,
  askDoorText,
  batchQuestion,
  type Door,
  type DoorAnswer,
  describeDoor,
  type Finding,
  findDoor,
  inputTooLargeFinding,
  parseWire,
  readJson,
  unknownDoorFinding,
} from "#contract";
import { formatFindingsJson } from "./format-findings.ts";
import { decodeText, type InputText, readLines, readText } from "./read-input.ts";
import { type ExitStatus, type Terminal, writeLine } from "./terminal.ts";

/** Prints every calculation with its line, or all of them with their schemas as JSON. */
export const listCalculations = async (
  terminal: Terminal,
  doors: readonly Door[],
  asJson: boolean,
): Promise<ExitStatus> => {
  if (asJson) {
    await writeLine(terminal.output, JSON.stringify({ calculations: doors.map(describeDoor) }, null, 2));
    return 0;
  }
  const width = Math.max(0, ...doors.map(({ id }) => id.length));
  for (const { id, summary } of doors) await writeLine(terminal.output, `${id.padEnd(width)}  ${summary}`);
  return 0;
};

/** Answers one calculation: JSON on the input, JSON on the output, findings among the problems. */
export const answerOne = async (terminal: Terminal, doors: readonly Door[], id: string): Promise<ExitStatus> => {
  const text = findDoor(id, doors) === null ? { text: "" } : await readText(terminal.input);
  const answer = "findings" in text ? text : askDoorText(id, text.text, doors);
  if ("findings" in answer) {
    await writeLine(terminal.problems, formatFindingsJson(answer.findings));
    return 2;
  }
  await writeLine(terminal.output, JSON.stringify(answer.output));
  return 0;
};

/** A finding about the whole line as one about the input alone, so that it reads as if the input had come by itself. */
const insideInput = (finding: Finding): Finding => ({
  ...finding,
  path: finding.path.replace(/^input(\.|(?=\[)|$)/, ""),
});

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The line without what its door checks itself. */
const envelopeOf = (line: unknown): unknown => (isObject(line) && isObject(line.input) ? { ...line, input: {} } : line);

const answerLine = (line: InputText, doors: readonly Door[]): DoorAnswer => {
  if ("findings" in line) return line;
  const reading = readJson(line.text);
  if (!reading.readable) return { findings: reading.findings.map(insideInput) };
  const envelope = parseWire(batchQuestion, envelopeOf(reading.value));
  if ("findings" in envelope) return envelope;
  const { id } = envelope.value;
  const door = findDoor(id, doors);
  if (door === null) return { findings: [unknownDoorFinding(id, doors)] };
  const { input } = reading.value as { readonly input: unknown };
  return askDoorReading(door, { readable: true, value: input, findings: reading.findings.map(insideInput) });
};

const ourFault: Finding = {
  code: "our-fault",
  path: "",
  got: "a line that should have been answered",
  needed: "nothing of you",
  hint: "The program made a mistake; what happened stands on standard error.",
};

/** Answers line by line in the order asked; a refused line is answered by its findings and does not end the run. */
export const answerBatch = async (terminal: Terminal, doors: readonly Door[]): Promise<ExitStatus> => {
  let status: ExitStatus = 0;
  for await (const line of readLines(terminal.input)) {
    let answer: DoorAnswer;
    try {
      answer = line === null ? { findings: [inputTooLargeFinding] } : answerLine(decodeText(line), doors);
    } catch (problem) {
      status = 1;
      answer = { findings: [ourFault] };
      await writeLine(terminal.problems, problem instanceof Error ? String(problem.stack) : String(problem));
    }
    await writeLine(terminal.output, JSON.stringify(answer));
  }
  return status;
};
