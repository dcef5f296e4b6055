import {
  type CornerAssembly,
  type CornerEnd,
  type CornerJoint,
  type CornerPoint,
  factoriseCorrelation,
} from "#vehicle";

/** Gives a standard normal number, each call another. */
export type Draw = () => number;

/** A factor whose logarithm is normal with this standard deviation. */
export const drawFactor = (draw: Draw, sd: number): number => Math.exp(sd * draw());

/** A joint with its rates as they may be. */
function disturbJoint(joint: CornerJoint, draw: Draw): CornerJoint {
  const factor = drawFactor(draw, joint.rateSdShare);
  const times = (rate: number | null): number | null => (rate === null ? null : rate * factor);
  return {
    ...joint,
    radial: times(joint.radial),
    axial: times(joint.axial),
    voided: joint.voided && { ...joint.voided, rate: joint.voided.rate * factor },
    conical: times(joint.conical),
    torsional: times(joint.torsional),
  };
}

/** Errors of every coordinate in its standard deviations, drawn as they hang together. */
function drawErrors({ points, correlation }: CornerAssembly, draw: Draw): readonly number[] {
  const drawn = points.flatMap(() => [draw(), draw(), draw()]);
  const factor = correlation && factoriseCorrelation(correlation);
  if (!factor) return drawn;
  return factor.map((row) => row.reduce((sum, weight, j) => sum + weight * (drawn[j] as number), 0));
}

/** The same corner as it may be: every hard point and rate drawn from what is known of it. */
export function disturbCorner(assembly: CornerAssembly, draw: Draw): CornerAssembly {
  const errors = drawErrors(assembly, draw);
  const along = (i: number, axis: 0 | 1 | 2, { at, sd }: CornerPoint): number =>
    at[axis] + sd[axis] * (errors[3 * i + axis] as number);
  const points = assembly.points.map((point, i) => ({
    ...point,
    at: [along(i, 0, point), along(i, 1, point), along(i, 2, point)] as const,
  }));
  const moved = (end: CornerEnd): CornerEnd => ({ ...end, at: points[end.point]?.at ?? end.at });
  const { strut, trailingArm } = assembly;
  return {
    ...assembly,
    points,
    links: assembly.links.map((link) => ({
      ...link,
      inner: moved(link.inner),
      outer: moved(link.outer),
      innerJoint: disturbJoint(link.innerJoint, draw),
      outerJoint: disturbJoint(link.outerJoint, draw),
    })),
    strut: strut && {
      top: moved(strut.top),
      axisPoint: moved(strut.axisPoint),
      topMount: disturbJoint(strut.topMount, draw),
    },
    trailingArm: trailingArm && {
      ...trailingArm,
      bush: moved(trailingArm.bush),
      bushJoint: disturbJoint(trailingArm.bushJoint, draw),
    },
  };
}
