import type { Reason } from "./place-finding.ts";
import { formatChance } from "./plan-words.ts";

const againstWords = {
  limit: "Against the limit",
  twin: "Against the other side",
  past: "Against its own past",
} as const;

/** What a reading was held against, for the head of a line; a sign is seen, not held against anything. */
export const reasonHead = ({ judgement }: Reason): string =>
  judgement === null ? "Seen" : againstWords[judgement.against];

/** What came of it and how sure: "beyond, 99 % sure", "too close to call: within with 61 %", "not comparable". */
export function reasonOutcome({ judgement }: Reason): string {
  if (judgement === null) return "";
  if (judgement.decision === null && "why" in judgement) return "not judged";
  if (judgement.decision === null) return `not comparable: taken ${judgement.reading}, the other ${judgement.other}`;
  const { probabilityWithin: within, decision } = judgement;
  if (decision === "beyond") return `beyond, ${formatChance(1 - within)} sure`;
  if (decision === "within") return `within, ${formatChance(within)} sure`;
  return `too close to call: within with ${formatChance(within)}`;
}
