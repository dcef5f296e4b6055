import { type Match, type MatchQuestion, solveMatch } from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Rung } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import { heightWords } from "./reading-words.ts";
import { isTemplate, TEMPLATE_MAY_BE_WRONG } from "./template-words.ts";

/** Slope of half the misfit, per standard deviation of a source, below which a search is at its end. */
const FLAT = 1e-3;
/** Readings agree where their squared misfit is not larger than so many times their number (invented). */
const AGREE = 3;
/** One reading is the wrong one where leaving out any other leaves so many times its misfit (invented). */
const CLEARLY = 3;

/** True where a search has come to the most probable corner. */
export const isSettled = ({ report }: Match): boolean =>
  report.end === "converged" || (report.end === "iteration-limit" && report.residual < FLAT);

interface LeftOut {
  readonly index: number;
  readonly kind: "camber" | "toe";
  readonly misfit: number;
}

/** Why readings lead nowhere: the one without which the others agree, that it is one of several, or that there is none. */
export function findMisfit(question: MatchQuestion, rung: Rung): Finding {
  const candidates = leftOut(question).toSorted((a, b) => a.misfit - b.misfit);
  const [best, second] = candidates;
  const template = isTemplate(rung) ? ` If they stay as they are, ${TEMPLATE_MAY_BE_WRONG}` : "";
  if (best === undefined)
    return {
      code: "no-equilibrium",
      path: "readings",
      got: "readings that no points near those on file explain",
      needed: "readings that agree with each other and with the points within their plus or minus",
      hint: `Look for a reading at the wrong height or with the wrong sign, or for a plus or minus that is too small.${template}`,
    };
  const angle = ({ index, kind }: LeftOut): string =>
    `${formatNumber(degreesFromRadians(question.readings.wheel[index]?.[kind]?.value ?? 0), 2)}°`;
  if (second === undefined || second.misfit > CLEARLY * best.misfit)
    return {
      code: "not-consistent",
      path: `readings[${best.index}].${best.kind}`,
      got: angle(best),
      needed: "a reading that agrees with the others: without this one they do",
      hint: isTemplate(rung) ? `Read it again. If it stays as it is, ${TEMPLATE_MAY_BE_WRONG}` : "Read it again.",
    };
  return {
    code: "not-consistent",
    path: "readings",
    got: candidates.map((one) => `${one.kind} ${angle(one)} at ${heightOf(question, one)}`).join("; "),
    needed: "readings that agree: without any one of these the others do, so it cannot be said which is wrong",
    hint: `Read them again.${template}`,
  };
}

const heightOf = ({ readings }: MatchQuestion, { index }: LeftOut): string =>
  heightWords(readings.wheel[index]?.travel.value ?? 0);

/** Each angle without which the others agree. */
function leftOut(question: MatchQuestion): readonly LeftOut[] {
  const { wheel } = question.readings;
  return wheel.flatMap((_, index) =>
    (["camber", "toe"] as const).flatMap((kind): readonly LeftOut[] => {
      if (wheel[index]?.[kind] == null) return [];
      const others = wheel.map((reading, i) => (i === index ? { ...reading, [kind]: null } : reading));
      const match = solveMatch({ ...question, readings: { ...question.readings, wheel: others } });
      const misfit = match.chiSquared / Math.max(1, match.degreesOfFreedom);
      return isSettled(match) && misfit < AGREE ? [{ index, kind, misfit }] : [];
    }),
  );
}
