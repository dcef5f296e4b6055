import type { Finding } from "#numeric";
import type { Door, DoorAnswer } from "./door.ts";
import { doors } from "./doors/index.ts";
import { findNearest } from "./edit-distance.ts";
import { type JsonReading, readJson } from "./read-json.ts";
import { limitFindings, parseReading, parseWire } from "./refusal.ts";
import { type JsonSchema, jsonSchemaOf } from "./refusal-schema.ts";
import { formatPath } from "./wire-path.ts";

/** The door with this id, or null. */
export const findDoor = (id: string, among: readonly Door[] = doors): Door | null =>
  among.find((door) => door.id === id) ?? null;

/** What is said when nobody answers to an id: the nearest that exists. */
export const unknownDoorFinding = (id: string, among: readonly Door[] = doors): Finding => {
  const known = among.map((door) => door.id);
  const nearest = findNearest(id, known);
  return {
    code: "unknown-calculation",
    path: "id",
    got: id.slice(0, 80),
    needed: "the id of a calculation",
    hint: nearest === null ? "The list of ids is what calc --list prints." : `The nearest is ${nearest}.`,
  };
};

/** Path of the first number in a value that is NaN or infinite; null where all are finite. */
const findNotFinite = (value: unknown): readonly PropertyKey[] | null => {
  if (typeof value === "number") return Number.isFinite(value) ? null : [];
  if (typeof value !== "object" || value === null) return null;
  const steps: readonly [PropertyKey, unknown][] = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  for (const [key, inner] of steps) {
    const found = findNotFinite(inner);
    if (found !== null) return [key, ...found];
  }
  return null;
};

/** Computes; an answer that holds NaN or infinity is a fault of ours and never leaves as null. */
const compute = <Input>(door: Door<Input>, parsed: { readonly value: Input }): DoorAnswer => {
  const answer = door.compute(parsed.value);
  if ("findings" in answer) return { findings: limitFindings(answer.findings) };
  const hole = findNotFinite(answer.output);
  if (hole !== null) throw new Error(`The answer of ${door.id} is not finite at ${formatPath(hole)}.`);
  return answer;
};

/** Asks one door with a text that has been read as JSON: its output, or every finding; throws only on a fault of ours. */
export const askDoorReading = (door: Door, reading: JsonReading): DoorAnswer => {
  const own = reading.readable ? (door.check?.(reading.value) ?? []) : [];
  const parsed = parseReading(door.input, reading, own);
  return "findings" in parsed ? parsed : compute(door, parsed);
};

/** Asks the door with this id with a value: its output, or every finding; throws only on a fault of ours. */
export const askDoor = (id: string, value: unknown, among: readonly Door[] = doors): DoorAnswer => {
  const door = findDoor(id, among);
  if (door === null) return { findings: [unknownDoorFinding(id, among)] };
  const parsed = parseWire(door.input, value, door.check?.(value) ?? []);
  return "findings" in parsed ? parsed : compute(door, parsed);
};

/** Asks the door with this id with a JSON text, as the command line does. */
export const askDoorText = (id: string, text: string, among: readonly Door[] = doors): DoorAnswer => {
  const door = findDoor(id, among);
  return door === null ? { findings: [unknownDoorFinding(id, among)] } : askDoorReading(door, readJson(text));
};

/** What a door says of itself, as the list prints it. */
export interface DoorDescription {
  readonly id: string;
  readonly summary: string;
  readonly relation: string;
  readonly source: string;
  readonly accuracy: string;
  readonly input: JsonSchema;
  readonly output: JsonSchema;
}

/** What a door says of itself, with the JSON Schemas of its input and output. */
export const describeDoor = (door: Door): DoorDescription => ({
  id: door.id,
  summary: door.summary,
  relation: door.relation,
  source: door.source,
  accuracy: door.accuracy,
  input: jsonSchemaOf(door.input),
  output: jsonSchemaOf(door.output),
});
