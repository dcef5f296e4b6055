import type { Decision } from "#engines/metrology";
import { shownValue } from "../cases/reading-reasons.ts";
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

function rowWords({ place, quantity, asFound, asLeft, leftDecision }: JudgedAsLeft, isJudged: boolean): string {
  const corner = place.slice(0, place.indexOf("/")).replace("-", " ");
  const decision = !isJudged || leftDecision === null ? "" : ` (${decisionWords[leftDecision]})`;
  return `${corner} ${asFound === null ? "not read" : shownValue(quantity, asFound)}, ${asLeft === null ? "not read" : shownValue(quantity, asLeft)}${decision}`;
}
