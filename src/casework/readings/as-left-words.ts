import type { Decision } from "#engines/metrology";
import { shownValue } from "../cases/reading-reasons.ts";
import { quantityForms } from "../cases/standard-readings.ts";
import type { CarAsLeft, JudgedAsLeft } from "./judge-as-left.ts";

const DECISIONS: Readonly<Record<Decision, string>> = {
  within: "within its limit",
  beyond: "beyond its limit",
  "too close to call": "too close to call",
};

/**
 * What was read again at the end beside what was read before, one sentence per quantity: "Camber, as found and as left:
 * front left −1.32° and −1.10°, within its limit; ...". Places that were not read again are left out.
 */
export function asLeftWords({ readings, axles }: Pick<CarAsLeft, "readings" | "axles">): readonly string[] {
  const again = readings.filter(({ asLeft }) => asLeft !== null);
  const quantities = [...new Set(again.map(({ quantity }) => quantity))];
  const ofAxles = axles.filter(({ asLeft }) => asLeft !== null);
  return [
    ...quantities.map((quantity) => {
      const rows = again.filter((row) => row.quantity === quantity).map(rowWords);
      return `${quantityForms[quantity].label}, as found and as left: ${rows.join("; ")}.`;
    }),
    ...(ofAxles.length === 0
      ? []
      : [
          `Both wheels together, as found and as left: ${ofAxles
            .map(({ label, asFound, asLeft }) => `${label.toLowerCase()} ${asFound ?? "not read"}, now ${asLeft}`)
            .join("; ")}.`,
        ]),
  ];
}

function rowWords({ place, quantity, asFound, asLeft, leftDecision }: JudgedAsLeft): string {
  const corner = place.slice(0, place.indexOf("/")).replace("-", " ");
  const decision = leftDecision === null ? "" : `, ${DECISIONS[leftDecision]}`;
  return `${corner} ${asFound === null ? "not read" : shownValue(quantity, asFound)} and ${asLeft === null ? "not read" : shownValue(quantity, asLeft)}${decision}`;
}
