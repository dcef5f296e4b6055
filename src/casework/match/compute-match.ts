import { type Match, type MatchQuestion, solveMatch, TravelBand } from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians } from "#quantity";
import { axleAndSide, keptCorrelation } from "#vehicle";
import { refuseBodies } from "../fault/bodies-refused.ts";
import { bandOfAngles } from "../fault/change-band.ts";
import { type CornerModel, modelCorner, pointIndex } from "../fault/corner-model.ts";
import { listParts } from "../fault/effect-parts.ts";
import type { CornerMatch, MatchAsked, MatchedPoint } from "../match.ts";
import type { TravelLine, TravelPlot } from "../travel/travel-sheet.ts";
import { checkMatch } from "./check-match.ts";
import { findMisfit, isSettled } from "./find-misfit.ts";
import type { MatchFacts } from "./match-facts.ts";
import { buildMatchedFigures } from "./match-figures.ts";
import { priorOf } from "./match-prior.ts";
import { describeMatch } from "./match-words.ts";

const FURTHEST = 0.08;
const STEPS_EACH_WAY = 8;

/**
 * A corner matched to camber and toe read at three heights or more and to lengths from the bench: curves with their bands
 * before and after, which figures have become printable, what stays undetermined, which readings contradict the others.
 * Findings where it cannot be matched.
 */
export function computeMatch(
  asked: MatchAsked,
): { readonly match: CornerMatch } | { readonly findings: readonly Finding[] } {
  const refused = refuseBodies(
    asked.family,
    [axleAndSide(asked.corner).axle],
    "fitting readings needs the derivatives of every figure by its points",
  );
  if (refused.length > 0) return { findings: refused };
  const model = modelCorner(asked.family, asked.corner);
  const { assembly } = model;
  const findings = checkMatch(asked, assembly);
  if (findings.length > 0) return { findings };
  const { geometry, deviations, correlations } = model;
  const { u } = asked;
  const question: MatchQuestion = {
    geometry,
    ...priorOf(asked, model),
    readings: {
      heightBase: u.heightBase,
      wheel: asked.readings.map(({ travel, camber, toe }) => ({
        travel: { value: travel, u: u.travel },
        camber: camber === null ? null : { value: camber, u: u.camber },
        toe: toe === null ? null : { value: toe, u: u.toe },
      })),
      lengths: asked.lengths.map(({ link, length }) => ({ link, length: { value: length, u: u.length } })),
    },
  };
  const match = solveMatch(question);
  if (!isSettled(match)) return { findings: [findMisfit(question, assembly.rung)] };
  const before = new TravelBand(geometry, deviations, correlations);
  const after = new TravelBand(match.geometry, deviations, correlations);
  const facts = { asked, model, match, before, after };
  const figures = buildMatchedFigures(facts);
  return {
    match: {
      corner: asked.corner,
      rung: assembly.rung,
      invented: asked.family.invented,
      parts: listParts(model),
      plots: [plotOf(facts, "toe"), plotOf(facts, "camber")],
      figures,
      ...pointsOf(model, match),
      ...describeMatch(facts, figures),
    },
  };
}

/** Change of an angle from ride height over travel, before and matched, each with its band, and the readings as dots. */
function plotOf({ asked, model, match, before, after }: MatchFacts, key: "toe" | "camber"): TravelPlot {
  const { bumpStop, droopStop } = model.assembly;
  const top = Math.min(FURTHEST, bumpStop);
  const bottom = Math.min(FURTHEST, droopStop);
  const rises = Array.from({ length: 2 * STEPS_EACH_WAY + 1 }, (_, i) => {
    const part = (i - STEPS_EACH_WAY) / STEPS_EACH_WAY;
    return part < 0 ? part * bottom : part * top;
  });
  const line = (band: TravelBand, matched: boolean): TravelLine => {
    const points = rises.flatMap((rise) => {
      const at = band.solve(rise);
      if ("foldAt" in at) return [];
      const change = at[key === "toe" ? "toeChange" : "camberChange"];
      const sd = matched ? match.posterior.deviation(change.jet) : change.sd;
      const value = degreesFromRadians(change.value);
      const [low, high] = bandOfAngles([{ value, sd: degreesFromRadians(sd) }]);
      return [{ rise, value, low, high }];
    });
    return {
      state: "sound",
      words: matched ? "matched" : "before",
      subject: matched ? "sound" : "beside",
      rises: points.map((p) => p.rise),
      values: points.map((p) => p.value),
      low: points.map((p) => p.low),
      high: points.map((p) => p.high),
    };
  };
  const matched = line(after, true);
  return {
    figure: key,
    title: `${key} from ride height, °${key === "toe" ? ", in is +" : ""}`,
    unit: "deg",
    lines: [line(before, false), matched],
    leftOut: ["rings: readings, less the setting fitted to them all"],
    dots: dotsOf(asked, match, key),
  };
}

/** Readings of one angle less the fitted setting, where the matched height of each puts them. */
function dotsOf({ readings, family, corner }: MatchAsked, match: Match, key: "toe" | "camber") {
  const design = family[corner.startsWith("front") ? "front" : "rear"].wheel[key];
  const setting = match.settings[key];
  return readings.flatMap((reading) => {
    const value = reading[key];
    return value === null ? [] : [{ rise: reading.travel, value: degreesFromRadians(value - design - setting) }];
  });
}

/** The matched place of every hard point, the deviation left along each axis, and how these errors hang together. */
function pointsOf({ assembly }: CornerModel, { errors, shifts, posterior }: Match) {
  const covariance = posterior.coordinateCovariances();
  const sds = covariance.map((row, i) => Math.sqrt(Math.max(0, row[i] as number)));
  const points = errors.names.flatMap((engine, i): readonly MatchedPoint[] => {
    const point = assembly.points[pointIndex(assembly, engine)];
    const shift = shifts[i];
    if (!point || !shift) return [];
    const sd = (axis: number): number => sds[3 * i + axis] as number;
    return [
      {
        name: point.name,
        at: [point.at[0] + shift[0], point.at[1] + shift[1], point.at[2] + shift[2]],
        sd: [sd(0), sd(1), sd(2)],
      },
    ];
  });
  const matrix = covariance.map((row, i) =>
    row.map((value, j) => {
      const scale = (sds[i] as number) * (sds[j] as number);
      return i === j || scale === 0 ? Number(i === j) : value / scale;
    }),
  );
  return {
    points,
    correlation: keptCorrelation(
      points.map(({ name }) => name),
      matrix,
    ),
  };
}
