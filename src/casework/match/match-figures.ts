import type { BandFigure } from "#engines/linkage";
import { parameterJet } from "#numeric";
import { bandOfAngles } from "../fault/change-band.ts";
import { findSettlingReading, isSignSure, readingOf } from "../fault/settle.ts";
import type { Figure } from "../fault-effect.ts";
import type { CoordinateShare, MatchedFigure } from "../match.ts";
import { cornerOutputs } from "../points/corner-outputs.ts";
import { AXIS_WORDS, largestShares } from "../points/largest-shares.ts";
import type { MatchFacts } from "./match-facts.ts";
import { readingWords } from "./reading-words.ts";

/** Coordinates named for each figure. */
const MOST_NAMED = 3;

/** Figures of the corner before and after its readings, with the coordinates each is owed to. */
export function buildMatchedFigures(facts: MatchFacts): readonly MatchedFigure[] {
  const { asked, model, match, before, after } = facts;
  const { assembly } = model;
  const outputs = cornerOutputs(assembly);
  const inputs = readingWords(asked);
  return outputs.flatMap((output): readonly MatchedFigure[] => {
    const [was, is] = [before.solve(output.travel), after.solve(output.travel)];
    if ("foldAt" in was || "foldAt" in is) return [];
    const figure = (of: BandFigure, sd: number, matched: boolean): Figure => {
      const value = output.show(of.value);
      const spread = output.show(sd);
      const sure = isSignSure(value, spread);
      return {
        key: `${output.key}-${matched ? "matched" : "before"}`,
        label: output.label,
        unit: output.unit,
        value,
        u: spread,
        range: null,
        band: bandOfAngles([{ value, sd: spread }]) as [number, number],
        rung: matched ? "matched" : assembly.rung,
        inputs: matched ? inputs : [],
        relation: matched
          ? "least of sum((reading - computed)²/u²) + sum((point - given)²/sd²), settings of camber and toe free; band: I - Jt (J Jt + R)⁻¹ J, exact derivatives; rigid linkage"
          : "rigid linkage at the points on file; exact derivatives by every coordinate, squares added",
        source: "regularised-least-squares, forward-derivatives; docs/method/rungs.md",
        signSure: sure,
        settle: sure ? null : findSettlingReading(before.jets, of.jet, assembly),
      };
    };
    const now = output.of(is);
    return [
      {
        before: figure(output.of(was), output.of(was).sd, false),
        after: figure(now, match.posterior.deviation(now.jet), true),
        owedTo: owedTo(facts, now),
      },
    ];
  });
}

/** The coordinates that matter most to a figure, with what is known of each before and after. */
function owedTo({ after, model, match }: MatchFacts, { jet }: BandFigure): readonly CoordinateShare[] {
  const n = 3 * match.errors.names.length;
  return largestShares(after.jets, jet, MOST_NAMED).map(({ point, axis, share, sd, parameter }) => ({
    words: `${readingOf(after.jets, parameter, model.assembly).reading.place}, ${AXIS_WORDS[axis]}`,
    share,
    sdBefore: sd,
    sdAfter: match.posterior.deviation(parameterJet(0, 3 * point + axis, n)),
  }));
}
