import { COMPOUND_SCATTER, computeHardnessFactor, HARDNESS_DEVIATION, HARDNESS_RANGE, TO_95 } from "#engines/rubber";
import type { Finding } from "#numeric";
import type { CornerJoint } from "#vehicle";
import type { Figure, FirmerRubber, Firmness, HardnessChange } from "../fault-effect.ts";
import { formatNumber, writtenDecimals } from "./format-figure.ts";
import { originWords } from "./phrases.ts";

/** A rate more than so many times the sound one's is no rubber any more (invented bound). */
const MOST_FIRMER = 100;
const LEAST_FIRMER = 0.01;

const [SOFTEST, HARDEST] = HARDNESS_RANGE;
const RANGE_WORDS = `${SOFTEST} to ${HARDEST} Shore A`;

/** A hardness as it was entered: "62.5". */
const shore = (hardness: number): string => formatNumber(hardness, Math.min(1, writtenDecimals(hardness)));

/** What is fitted in place of a sound part, in a few words: "firmer, 2 times", "firmer, 55 to 65 Shore A". */
export function firmerWords(fault: FirmerRubber): string {
  if (!("hardness" in fault)) return `${fault.factor >= 1 ? "firmer" : "softer"}, ${fault.factor} times`;
  const { from, to } = fault.hardness;
  if (to === null) return from === null ? "firmer, hardness not said" : `firmer than ${shore(from)} Shore A`;
  return from === null ? `firmer, ${shore(to)} Shore A` : `firmer, ${shore(from)} to ${shore(to)} Shore A`;
}

/** What keeps a firmer part from being computed; `onFile`: hardness of the joint in the family sheet, Shore A. */
export function checkFirmer(fault: FirmerRubber, onFile: number | null): readonly Finding[] {
  if (!("hardness" in fault)) {
    const { factor } = fault;
    return factor >= LEAST_FIRMER && factor <= MOST_FIRMER
      ? []
      : [
          {
            code: "out-of-range",
            path: "fault.factor",
            got: `${factor} times`,
            needed: `${LEAST_FIRMER} to ${MOST_FIRMER} times`,
            hint: "",
          },
        ];
  }
  const { from, to } = fault.hardness;
  const old = from ?? onFile;
  const findings = [...checkHardness("from", old), ...checkHardness("to", to)];
  if (findings.length > 0 || old === null || to === null || to > old) return findings;
  return [
    {
      code: "not-consistent",
      path: "fault.hardness.to",
      got: `${shore(to)} Shore A in the place of ${shore(old)}`,
      needed: "a new part that is harder than the old one",
      hint:
        to === old
          ? "Both are of one hardness: the new part is as firm as the old one."
          : "The new part is softer, not firmer. Perhaps the two are exchanged.",
    },
  ];
}

function checkHardness(which: keyof HardnessChange, hardness: number | null): readonly Finding[] {
  const path = `fault.hardness.${which}`;
  const part = which === "from" ? "old" : "new";
  if (hardness === null)
    return [
      {
        code: "hardness-not-known",
        path,
        got: "nothing",
        needed: `the hardness of the ${part} part, ${RANGE_WORDS}`,
        hint:
          which === "from"
            ? "Read it on the part itself or on its twin, or from the maker's sheet; none is on file for this place. Or give how many times the rate is."
            : "From the part, its sheet or its packet. Or give how many times the rate is.",
      },
    ];
  if (hardness >= SOFTEST && hardness <= HARDEST) return [];
  return [
    {
      code: "out-of-range",
      path,
      got: `${shore(hardness)} Shore A`,
      needed: RANGE_WORDS,
      hint: `The relation from hardness to rate holds from ${RANGE_WORDS}. Beyond it, as of many parts of polyurethane, give how many times the rate is.`,
    },
  ];
}

/** What the family sheet says of the hardness of a place. */
type RubberOnFile = Pick<CornerJoint, "hardness" | "rateOrigin">;

/** How firm a part is by its hardness; null of any other fault, and where checkFirmer objects. */
export function firmnessOf(fault: FirmerRubber, joint: RubberOnFile | null): Firmness | null {
  if (!("hardness" in fault)) return null;
  const onFile = joint?.hardness ?? null;
  const from = fault.hardness.from ?? onFile;
  const { to } = fault.hardness;
  if (from === null || to === null || checkFirmer(fault, onFile).length > 0) return null;
  const { factor, low, high } = computeHardnessFactor(from, to);
  const origin =
    fault.hardness.from === null && joint
      ? `from the family sheet, ${originWords[joint.rateOrigin] ?? joint.rateOrigin}`
      : "as entered";
  return { from, to, factor, low, high, origin };
}

const times = (factor: number): string => formatNumber(factor, 2);

/** The factor with its range: "1.49 times the sound rate, 1.07 to 2.08 (95 %)". */
export const firmnessWords = ({ factor, low, high }: Firmness): string =>
  `${times(factor)} times the sound rate, ${times(low)} to ${times(high)} (95 %)`;

/** Whether a part may be no firmer at all: its hardness lies within what readings and compounds differ by. */
export const mayBeNoFirmer = ({ low }: Firmness): boolean => low <= 1;

/** What a firmer part is computed from, as inputs of a figure. */
export function firmerInputs(fault: FirmerRubber, firmness: Firmness | null): Figure["inputs"] {
  if (firmness === null)
    return "factor" in fault
      ? [{ label: "Rate against sound", value: `${times(fault.factor)} times; as entered` }]
      : [];
  const { from, to, origin } = firmness;
  return [
    { label: "Hardness, old and new", value: `${shore(from)} and ${shore(to)} Shore A; the old one ${origin}` },
    { label: "Rate against sound", value: `${firmnessWords(firmness)}; ratio of the moduli of both hardnesses` },
  ];
}

/** What the factor stands on, as a sentence of "how sure". */
export function howFirmWords(fault: FirmerRubber, firmness: Firmness | null): string {
  if (firmness === null)
    return "factor" in fault ? `${times(fault.factor)} times the sound rate is taken as exact.` : "";
  const { from, to, origin } = firmness;
  const two = `${shore(from)} to ${shore(to)} Shore A`;
  const apart = mayBeNoFirmer(firmness)
    ? ` That is within what two readings of one part and two compounds of one hardness differ by, so the new part may be no firmer.`
    : "";
  return `${two} makes ${firmnessWords(firmness)}, at the same dimensions, by a published relation (gent-hardness) that holds from ${RANGE_WORDS} (the old hardness ${origin}; ${SCATTER_WORDS}).${apart}`;
}

const SCATTER_WORDS = `±${formatNumber(TO_95 * HARDNESS_DEVIATION, 1)} for each reading, ${formatNumber(100 * COMPOUND_SCATTER, 0)} % between compounds`;

/** What would settle whether a part is firmer at all; null where that is sure. */
export const settleFirmness = (firmness: Firmness | null): string | null =>
  firmness === null || !mayBeNoFirmer(firmness)
    ? null
    : "The two hardnesses lie too near to each other to say that the new part is firmer. Load both parts alike on the bench and enter how many times the rate is.";
