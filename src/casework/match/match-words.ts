import type { MatchedReading } from "#engines/linkage";
import { parameterJet } from "#numeric";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { layoutDoubt, type Rung } from "#vehicle";
import { decimalsOf, formatFigure, formatNumber, unitSign } from "../fault/format-figure.ts";
import type { Figure } from "../fault-effect.ts";
import type { CornerMatch, MatchAsked, MatchedFigure, ReadingBeside } from "../match.ts";
import type { MatchFacts } from "./match-facts.ts";
import { heightWords } from "./reading-words.ts";
import { isTemplate, TEMPLATE_MAY_BE_WRONG } from "./template-words.ts";

/** Beyond so many standard deviations a reading contradicts the others (common practice, no source). */
const CONTRADICTS = 3;
/** A coordinate that keeps so much of its deviation was not found by the readings. */
const HARDLY_KNOWN = 0.9;

type Words = Pick<CornerMatch, "sentence" | "undetermined" | "contradicting" | "howSure" | "computedSo" | "readings">;

const said = (figure: Figure): string =>
  figure.signSure ? `${formatFigure(figure)} ${spreadOf(figure)}` : "sign not sure";
/** "±0.02°" */
const spreadOf = (figure: Figure): string =>
  `±${formatNumber(2 * figure.u, decimalsOf(figure))}${unitSign(figure.unit)}`;

/** The words of a match, every number in them taken from its figures. */
export function describeMatch(facts: MatchFacts, figures: readonly MatchedFigure[]): Words {
  const readings = facts.match.readings.map((one) => beside(one, facts.asked));
  const { assembly } = facts.model;
  const bad = readings.filter(({ contradiction }) => Math.abs(contradiction) > CONTRADICTS);
  return {
    readings,
    sentence: sentenceOf(facts, figures, bad.length),
    undetermined: undeterminedWords(facts),
    contradicting: bad.length === 0 ? null : contradictionWords(bad, assembly.rung),
    howSure: `${layoutDoubt(assembly, [assembly.axle])}Bands hold 95 %. They are as good as the deviations on file and the plus or minus typed here: a reading given as surer than it is makes a band that is too narrow. Camber and toe as set are free: adjusters say nothing of the hard points.`,
    computedSo:
      "The most probable points given what is on file and what was read; the rigid linkage, its joints without rubber, the wheel not steered. Every derivative exact. Left and right are taken as mirror images, so what is taken over holds for both sides.",
  };
}

/** Which readings contradict; on a template that it may be the template. */
function contradictionWords(bad: readonly ReadingBeside[], rung: Rung): string {
  const against = isTemplate(rung) ? "the others and the template" : "the others and the points";
  const said = bad.map(
    ({ words, observed, contradiction }) =>
      `${words} (${observed}) stands ${formatNumber(Math.abs(contradiction), 1)} standard deviations from what ${against} say.`,
  );
  const [it, stays] = bad.length === 1 ? ["it", "it stays as it is"] : ["them", "they stay as they are"];
  const otherwise = isTemplate(rung) ? ` If ${stays}, ${TEMPLATE_MAY_BE_WRONG}` : "";
  return `${said.join(" ")} Read ${it} again before anything is taken over.${otherwise}`;
}

function sentenceOf({ asked, model }: MatchFacts, figures: readonly MatchedFigure[], bad: number): string {
  const heights = asked.readings.length;
  const lengths =
    asked.lengths.length === 0
      ? ""
      : ` and ${asked.lengths.length === 1 ? "one length" : `${asked.lengths.length} lengths`} from the bench`;
  const matched = `Matched to ${heights} heights${lengths}`;
  if (bad > 0) {
    const doubt = isTemplate(model.assembly.rung)
      ? "the readings and the template do not go together"
      : `${bad === 1 ? "one reading contradicts" : `${bad} readings contradict`} the others`;
    return `${matched}, but ${doubt}: the figures stand only if every reading is right.`;
  }
  const became = figures.filter(({ before, after }) => !before.signSure && after.signSure);
  const narrower = figures
    .filter(({ before, after }) => before.signSure && after.signSure)
    .toSorted((a, b) => a.after.u / a.before.u - b.after.u / b.before.u)[0];
  const printable =
    became.length > 0
      ? `${became.length === 1 ? "one figure has" : `${became.length} figures have`} become printable: ${became.map(({ after }) => `${lowerFirst(after.label)} ${said(after)}`).join("; ")}`
      : narrower
        ? `no figure has become printable that was not; best narrowed: ${lowerFirst(narrower.after.label)}, ${spreadOf(narrower.after)} instead of ${spreadOf(narrower.before)}`
        : "no figure has become printable yet";
  return `${matched}, ${printable}.`;
}

const lowerFirst = (words: string): string => `${words.charAt(0).toLowerCase()}${words.slice(1)}`;

function undeterminedWords({ match, model }: MatchFacts): string {
  const n = 3 * match.errors.names.length;
  const deviations = model.deviations(match.errors.names).flat();
  const uncertain = deviations.flatMap((sd, i) => (sd > 0 ? [i] : []));
  const kept = uncertain.filter(
    (i) => match.posterior.deviation(parameterJet(0, i, n)) > HARDLY_KNOWN * (deviations[i] as number),
  );
  return `The readings settle ${formatNumber(match.settled, 1)} independent combinations of ${uncertain.length} coordinates; ${kept.length} coordinates keep nine tenths of their spread or more. What was read, and what hangs together with it, is known better; where each point lies is not. The band drawn is what stays open.`;
}

function beside(one: MatchedReading, { readings, lengths, family, corner }: MatchAsked): ReadingBeside {
  const { name, observed, fitted, contradiction } = one;
  if (name.kind === "length") {
    const links = family[corner.startsWith("front") ? "front" : "rear"].links;
    const link = lengths[name.index]?.link ?? "";
    const mm = (metres: number): string => `${formatNumber(mmFromMetres(metres), 1)} mm`;
    const label = links.find((l) => l.name === link)?.label ?? link;
    return { words: `${label}, pin to pin`, observed: mm(observed), fitted: mm(fitted), contradiction };
  }
  const degrees = (radians: number): string => `${formatNumber(degreesFromRadians(radians), 2)}°`;
  const height = heightWords(readings[name.index]?.travel ?? 0);
  const kind = name.kind === "toe" ? "Toe" : "Camber";
  return { words: `${kind} at ${height}`, observed: degrees(observed), fitted: degrees(fitted), contradiction };
}
