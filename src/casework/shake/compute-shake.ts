import type { Finding } from "#numeric";
import { mmFromMetres } from "#quantity";
import { axleAndSide, type CornerAssembly, type Family, type Position, positionsOf } from "#vehicle";
import { linksAt, modelCorner } from "../fault/corner-model.ts";
import { listParts } from "../fault/effect-parts.ts";
import type { Spread } from "../sampling/spread.ts";
import type { Shake, ShakeLine, ShakeQuestion } from "../shake.ts";
import { sampleShakeBand } from "./shake-band.ts";
import { computeShakeCurves, SPEEDS } from "./shake-curves.ts";
import type { ShakeFacts } from "./shake-facts.ts";
import { buildShakeFigures } from "./shake-figures.ts";
import { makeShakeModel } from "./shake-model.ts";
import { shakeWheelOf } from "./shake-wheel.ts";
import { describeShake } from "./shake-words.ts";

/** More than any disc that still brakes (invented), metres. */
export const MOST_VARIATION = 0.2e-3;

const refused = (code: string, path: string, got: string, needed: string, hint: string) => ({
  findings: [{ code, path, got, needed, hint }],
});

/** The link whose inner end holds the hydraulic bush of a position, or what is in the way. */
function findLink(assembly: CornerAssembly, position: Position): string | { readonly findings: readonly Finding[] } {
  const [name] = linksAt(assembly, position);
  const link = assembly.links.find((one) => one.name === name);
  if (position.kind !== "hydraulic-bush" || position.joint?.end !== "inner" || !link)
    return refused(
      "no-fluid-here",
      "position",
      position.label,
      "a hydraulic bush at the inner end of a link",
      "Without fluid nothing can leak; look at it as torn, loose or firmer.",
    );
  if (link.innerJoint.fluid === null)
    return refused(
      "no-fluid-on-file",
      "position",
      position.label,
      "the fluid of this bush: volume rate, inertia, damping and loss factor",
      "Enter fluid in the family sheet; what it looks like does not depend on it.",
    );
  return link.name;
}

const lineOf = (state: ShakeLine["state"], values: readonly number[], spreads: readonly Spread[]): ShakeLine => ({
  state,
  values,
  low: spreads.map(({ low }) => low),
  high: spreads.map(({ high }) => high),
});

/**
 * The chain from an uneven disc over brake torque and the corner's flexibility along the road to the shake of its wheel,
 * with the fluid in a bush and without, over the road speed; with bands, as figures and words. Static pose and load play
 * no part, since the leaked bush keeps its static rate. Returns findings where it cannot be computed.
 */
export function computeShake(
  family: Family,
  question: ShakeQuestion,
): { readonly shake: Shake } | { readonly findings: readonly Finding[] } {
  const position = positionsOf(family).find(({ id }) => id === question.position);
  if (!position)
    return refused(
      "unknown-position",
      "position",
      question.position,
      "the id of a position of this family",
      "Ids read like rear-left/trailing-link/inner-bush.",
    );
  const { axle, side } = axleAndSide(question.corner);
  if (position.axle !== axle || position.side !== side)
    return refused("not-consistent", "corner", question.corner, `the corner of ${position.id}`, "");
  const corner = modelCorner(family, question.corner);
  const { assembly } = corner;
  const link = findLink(assembly, position);
  if (typeof link !== "string") return link;
  const usual = shakeWheelOf(family[axle]);
  const wheel = { ...usual, variation: question.variation ?? usual.variation };
  if (!(wheel.variation > 0 && wheel.variation <= MOST_VARIATION))
    return refused(
      "out-of-range",
      "variation",
      `${mmFromMetres(wheel.variation)} mm`,
      `more than 0, at most ${mmFromMetres(MOST_VARIATION)} mm`,
      "Read it with an outside micrometer at eight points around the disc.",
    );
  const model = makeShakeModel(assembly, link, wheel);
  const fluidSd = assembly.links.find(({ name }) => name === link)?.innerJoint.fluid?.sdShare ?? 0;
  const band = model && sampleShakeBand(assembly, link, wheel, fluidSd);
  if (!model || !band)
    return refused(
      "cannot-carry",
      "",
      "a corner that finds no balance on its spring",
      "a corner that carries its wheel load",
      "Look at the spring's points and the rates in the family sheet.",
    );
  const curves = computeShakeCurves(model);
  const facts: ShakeFacts = { assembly, position, model, curves, band };
  const figures = buildShakeFigures(facts);
  return {
    shake: {
      question,
      axle,
      rung: assembly.rung,
      invented: family.invented,
      parts: listParts(corner),
      speeds: SPEEDS,
      lines: [lineOf("sound", curves.sound, band.sound), lineOf("leaked", curves.leaked, band.leaked)],
      worst: {
        speed: SPEEDS[curves.worst] as number,
        atEnd: curves.worst === 0 || curves.worst === SPEEDS.length - 1,
      },
      headline: figures.headline,
      figures: figures.all,
      ...describeShake(facts, figures.headline),
    },
  };
}
