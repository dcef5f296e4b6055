import type { Decision } from "#engines/metrology";
import { formatReading, shownValue } from "../cases/reading-reasons.ts";
import { quantityForms } from "../cases/standard-readings.ts";
import type { CarAsLeft, JudgedAsLeft } from "./judge-as-left.ts";

const decisionWords: Readonly<Record<Decision, string>> = {
  within: "within its limit",
  beyond: "beyond its limit",
  "too close to call": "too close to call",
};

/**
 * What was read again at the end beside what was read before, one sentence per quantity: "Camber, as found and now: front
 * left −1.32°, −1.10°; ...; all within their limits." What lies beyond its limit says so. Places that were not read again are left out.
 */
export function asLeftWords({ readings, axles }: Pick<CarAsLeft, "readings" | "axles">): readonly string[] {
  const again = readings.filter(({ asLeft }) => asLeft !== null);
  const quantities = [...new Set(again.map(({ quantity }) => quantity))];
  const ofAxles = axles.filter(({ asLeft }) => asLeft !== null);
  return [
    ...quantities.map((quantity) => {
      const rows = again.filter((row) => row.quantity === quantity);
      const isWell = rows.every(({ leftDecision }) => leftDecision === "within");
      const end = isWell ? "; all within their limits" : "";
      return `${quantityForms[quantity].label}, as found and now: ${rows.map((row) => rowWords(row, !isWell)).join("; ")}${end}.`;
    }),
    ...(ofAxles.length === 0
      ? []
      : [
          `Both wheels together, as found and now: ${ofAxles
            .map(({ label, asFound, asLeft }) => `${label.toLowerCase()} ${asFound ?? "not read"}; ${asLeft}`)
            .join("; ")}.`,
        ]),
  ];
}

/**
 * The same in as few words as it takes, for a page without room: the corners named once, each figure as found and as it is
 * now; what is not within its limit is said.
 */
export function shortAsLeftWords({ readings }: Pick<CarAsLeft, "readings">): readonly string[] {
  const again = readings.filter(({ asLeft }) => asLeft !== null);
  if (again.length === 0) return [];
  const quantities = [...new Set(again.map(({ quantity }) => quantity))];
  const parts = quantities.map((quantity) => {
    const { unit } = quantityForms[quantity];
    const figure = (value: number | null): string => (value === null ? "not read" : formatReading(quantity, value));
    const rows = again
      .filter((row) => row.quantity === quantity)
      .map(({ place, asFound, asLeft, leftDecision }) => {
        const corner = place.slice(0, place.indexOf("/")).replace("-", " ");
        const decision = leftDecision === null || leftDecision === "within" ? "" : ` (${decisionWords[leftDecision]})`;
        return `${corner} ${figure(asFound)} to ${figure(asLeft)}${decision}`;
      });
    return `${quantityForms[quantity].label.toLowerCase()}${unit === "" ? "" : `, ${unit}`}: ${rows.join(", ")}`;
  });
  const isWell = again.every(({ leftDecision }) => leftDecision === "within");
  return [`Read again, as found to now${isWell ? ", all within their limits" : ""}: ${parts.join("; ")}.`];
}

function rowWords({ place, quantity, asFound, asLeft, leftDecision }: JudgedAsLeft, isJudged: boolean): string {
  const corner = place.slice(0, place.indexOf("/")).replace("-", " ");
  const decision = !isJudged || leftDecision === null ? "" : ` (${decisionWords[leftDecision]})`;
  return `${corner} ${asFound === null ? "not read" : shownValue(quantity, asFound)}, ${asLeft === null ? "not read" : shownValue(quantity, asLeft)}${decision}`;
}
