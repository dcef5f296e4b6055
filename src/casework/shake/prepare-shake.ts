import type { Finding } from "#numeric";
import { axleAndSide, type Corner, type CornerAssembly, type Family, type Position, positionsOf } from "#vehicle";
import { refuseBodies } from "../fault/bodies-refused.ts";
import { linksAt, modelCorner } from "../fault/corner-model.ts";
import { listParts } from "../fault/effect-parts.ts";
import type { EffectPart } from "../fault-effect.ts";
import { type ShakeBand, sampleShakeBand } from "./shake-band.ts";
import { computeShakeCurves, type ShakeCurves } from "./shake-curves.ts";
import { makeShakeModel, type ShakeModel } from "./shake-model.ts";
import { shakeWheelOf } from "./shake-wheel.ts";

/** A bush with and without its fluid in its corner, for any disc and any speed: what takes long is done. */
export interface PreparedShake {
  readonly family: Family;
  readonly assembly: CornerAssembly;
  readonly position: Position;
  readonly parts: readonly EffectPart[];
  readonly model: ShakeModel;
  /** Per thickness variation of the disc, as the band. */
  readonly curves: ShakeCurves;
  readonly band: ShakeBand;
}

export const refuseShake = (code: string, path: string, got: string, needed: string, hint: string) => ({
  findings: [{ code, path, got, needed, hint }],
});

/** The link whose inner end holds the hydraulic bush of a position, or what is in the way. */
function findLink(assembly: CornerAssembly, position: Position): string | { readonly findings: readonly Finding[] } {
  const [name] = linksAt(assembly, position);
  const link = assembly.links.find((one) => one.name === name);
  if (position.kind !== "hydraulic-bush" || position.joint?.end !== "inner" || !link)
    return refuseShake(
      "no-fluid-here",
      "position",
      position.label,
      "a hydraulic bush at the inner end of a link",
      "Without fluid nothing can leak; look at it as torn, loose or firmer.",
    );
  if (link.innerJoint.fluid === null)
    return refuseShake(
      "no-fluid-on-file",
      "position",
      position.label,
      "the fluid of this bush: volume rate, inertia, damping and loss factor",
      "Enter fluid in the family sheet; what it looks like does not depend on it.",
    );
  return link.name;
}

/** Draws a hydraulic bush in its corner as it may be; findings where the place holds no fluid or the corner no balance. */
export function prepareShake(
  family: Family,
  corner: Corner,
  place: string,
): { readonly prepared: PreparedShake } | { readonly findings: readonly Finding[] } {
  const position = positionsOf(family).find(({ id }) => id === place);
  if (!position)
    return refuseShake(
      "unknown-position",
      "position",
      place,
      "the id of a position of this family",
      "Ids read like rear-left/trailing-link/inner-bush.",
    );
  const { axle, side } = axleAndSide(corner);
  if (position.axle !== axle || position.side !== side)
    return refuseShake("not-consistent", "corner", corner, `the corner of ${position.id}`, "");
  const refused = refuseBodies(family, [axle], "the shake needs how far the wheel goes fore and aft by this one bush");
  if (refused.length > 0) return { findings: refused };
  const modelled = modelCorner(family, corner);
  const { assembly } = modelled;
  const link = findLink(assembly, position);
  if (typeof link !== "string") return link;
  const wheel = shakeWheelOf(family[axle]);
  const model = makeShakeModel(assembly, link, wheel);
  const fluidSd = assembly.links.find(({ name }) => name === link)?.innerJoint.fluid?.sdShare ?? 0;
  const band = model && sampleShakeBand(assembly, link, wheel, fluidSd);
  if (!model || !band)
    return refuseShake(
      "cannot-carry",
      "",
      "a corner that finds no balance on its spring",
      "a corner that carries its wheel load",
      "Look at the spring's points and the rates in the family sheet.",
    );
  const curves = computeShakeCurves(model);
  return { prepared: { family, assembly, position, parts: listParts(modelled), model, curves, band } };
}
