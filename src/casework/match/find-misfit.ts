import { type Match, type MatchQuestion, solveMatch } from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians } from "#quantity";
import { formatNumber } from "../fault/format-figure.ts";

/** Slope of half the misfit, per standard deviation of a source, below which a search is at its end. */
const FLAT = 1e-3;
/** Readings agree where their squared misfit is not larger than so many times their number (invented). */
const AGREE = 3;

/** True where a search has come to the most probable corner. */
export const isSettled = ({ report }: Match): boolean =>
  report.end === "converged" || (report.end === "iteration-limit" && report.residual < FLAT);

/** Why readings lead nowhere: the one without which the others agree, or that there is none. */
export function findMisfit(question: MatchQuestion): Finding {
  const { wheel } = question.readings;
  let best: { readonly index: number; readonly kind: "camber" | "toe"; readonly misfit: number } | null = null;
  for (const [index, one] of wheel.entries())
    for (const kind of ["camber", "toe"] as const) {
      if (one[kind] === null) continue;
      const others = wheel.map((reading, i) => (i === index ? { ...reading, [kind]: null } : reading));
      const match = solveMatch({ ...question, readings: { ...question.readings, wheel: others } });
      const misfit = match.chiSquared / Math.max(1, match.degreesOfFreedom);
      if (isSettled(match) && misfit < AGREE && (best === null || misfit < best.misfit)) best = { index, kind, misfit };
    }
  if (best === null)
    return {
      code: "no-equilibrium",
      path: "readings",
      got: "readings that no points near those on file explain",
      needed: "readings that agree with each other and with the points within their plus or minus",
      hint: "Look for a reading at the wrong height or with the wrong sign, or for a plus or minus that is too small.",
    };
  const angle = wheel[best.index]?.[best.kind]?.value ?? 0;
  return {
    code: "not-consistent",
    path: `readings[${best.index}].${best.kind}`,
    got: `${formatNumber(degreesFromRadians(angle), 2)}°`,
    needed: "a reading that agrees with the others: without this one they do",
    hint: "Read it again.",
  };
}
