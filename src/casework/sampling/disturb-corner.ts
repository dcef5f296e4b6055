import type { CornerAssembly, CornerEnd, CornerJoint } from "#vehicle";

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

/** The same corner as it may be: every hard point and rate drawn from its own standard deviation. */
export function disturbCorner(assembly: CornerAssembly, draw: Draw): CornerAssembly {
  const points = assembly.points.map((point) => ({
    ...point,
    at: [
      point.at[0] + point.sd[0] * draw(),
      point.at[1] + point.sd[1] * draw(),
      point.at[2] + point.sd[2] * draw(),
    ] as const,
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
