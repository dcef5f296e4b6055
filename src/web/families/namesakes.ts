import { formatNumber } from "#casework";
import type { FamilyLine } from "../server/family-list.ts";
import { isTaken } from "./distinct-name.ts";

type ReadLine = Exclude<FamilyLine, { findings: unknown }>;

/** What can differ between two car lines of one name beyond their layouts, in words. */
const FACTS: readonly ((line: ReadLine) => string)[] = [
  (line) => `wheelbase ${formatNumber(line.wheelbase_mm, 0)} mm`,
  (line) =>
    line.front.tyre_size === line.rear.tyre_size
      ? `tyres ${line.front.tyre_size}`
      : `tyres ${line.front.tyre_size}, ${line.rear.tyre_size}`,
  (line) => `${formatNumber(line.kerb_mass_kg, 0)} kg`,
];

/** Tells a car line from others of the same name: what differs, and the id it is kept under; null where it has no namesake. */
export const namesakeWords = (line: FamilyLine, lines: readonly FamilyLine[]): string | null => {
  const namesakes = lines.filter((other) => other.id !== line.id && isTaken(line.name, [other.name]));
  if (namesakes.length === 0) return null;
  const readable = namesakes.filter((other): other is ReadLine => !("findings" in other));
  const facts =
    "findings" in line
      ? []
      : FACTS.filter((fact) => readable.some((other) => fact(other) !== fact(line))).map((fact) => fact(line));
  return [...facts, `kept as ${line.id}`].join(", ");
};
