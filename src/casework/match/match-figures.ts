import type { BandFigure, BandPosition } from "#engines/linkage";
import { parameterJet } from "#numeric";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { bandOfAngles } from "../fault/change-band.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { findSettlingReading, isSignSure, readingOf } from "../fault/settle.ts";
import type { Figure } from "../fault-effect.ts";
import type { CoordinateShare, MatchedFigure } from "../match.ts";
import type { MatchFacts } from "./match-facts.ts";
import { readingWords } from "./reading-words.ts";

/** Changes are said at so much bump and droop, m, or at the stop where that comes first. */
const SAID_AT = 0.05;
/** Coordinates named for each figure. */
const MOST_NAMED = 3;
const AXES = ["fore and aft", "across", "height"] as const;

interface Output {
  readonly key: string;
  readonly label: string;
  readonly unit: "deg" | "mm" | "deg per m";
  readonly travel: number;
  readonly of: (at: BandPosition) => BandFigure;
  readonly show: (si: number) => number;
}

const outputsOf = (bump: number, droop: number): readonly Output[] => {
  const mm = (metres: number): string => `${formatNumber(mmFromMetres(Math.abs(metres)), 0)} mm`;
  const change = (key: "toe" | "camber", travel: number): Output => ({
    key: `${key}-${travel > 0 ? "bump" : "droop"}`,
    label: `${key === "toe" ? "Toe" : "Camber"} from ride height, ${mm(travel)} of ${travel > 0 ? "bump" : "droop"}`,
    unit: "deg",
    travel,
    of: (at) => (key === "toe" ? at.toeChange : at.camberChange),
    show: degreesFromRadians,
  });
  return [
    change("toe", bump),
    change("toe", -droop),
    change("camber", bump),
    change("camber", -droop),
    {
      key: "toe-gain",
      label: "Toe per travel at ride height",
      unit: "deg per m",
      travel: 0,
      of: (at) => at.toeGain,
      show: degreesFromRadians,
    },
    {
      key: "camber-gain",
      label: "Camber per travel at ride height",
      unit: "deg per m",
      travel: 0,
      of: (at) => at.camberGain,
      show: degreesFromRadians,
    },
    {
      key: "roll-centre",
      label: "Roll centre above the ground at ride height",
      unit: "mm",
      travel: 0,
      of: (at) => at.rollCentre,
      show: mmFromMetres,
    },
  ];
};

/** Figures of the corner before and after its readings, with the coordinates each is owed to. */
export function buildMatchedFigures(facts: MatchFacts): readonly MatchedFigure[] {
  const { asked, model, match, before, after } = facts;
  const { assembly } = model;
  const outputs = outputsOf(Math.min(SAID_AT, assembly.bumpStop), Math.min(SAID_AT, assembly.droopStop));
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

/** The coordinates with the largest shares of a figure's variance before the readings. */
function owedTo({ after, model, match }: MatchFacts, { jet }: BandFigure): readonly CoordinateShare[] {
  const { jets } = after;
  const n = 3 * match.errors.names.length;
  return jets
    .shares(jet)
    .map((share, i) => ({ share, i }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_NAMED)
    .flatMap(({ share, i }): readonly CoordinateShare[] => {
      const parameter = jets.parameters[i];
      if (parameter?.kind !== "coordinate") return [];
      const { reading } = readingOf(jets, i, model.assembly);
      return [
        {
          words: `${reading.place}, ${AXES[parameter.axis]}`,
          share,
          sdBefore: parameter.sd,
          sdAfter: match.posterior.deviation(parameterJet(0, 3 * parameter.point + parameter.axis, n)),
        },
      ];
    });
}
