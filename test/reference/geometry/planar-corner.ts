/** A point of a front view: [y, z] in mm. */
export type PlanePoint = readonly [number, number];

interface Arm {
  readonly inner: PlanePoint;
  readonly outer: PlanePoint;
}

const HALF_BASE = 120;
const ASIDE = 100;

/** Two links that hold an arm's outer point to a circle in the plane x = 0. */
const armLinks = (name: string, { inner, outer }: Arm) =>
  [HALF_BASE, -HALF_BASE].map((x, i) => ({
    name: `${name}_${i === 0 ? "front" : "rear"}`,
    inner_mm: [x, ...inner],
    outer_mm: [0, ...outer],
  }));

/** A link beside an arm, parallel to it: keeps the knuckle's motion in the plane. */
const guideLink = ({ inner, outer }: Arm) => ({
  name: "guide",
  inner_mm: [ASIDE, ...inner],
  outer_mm: [ASIDE, ...outer],
  steered: true,
});

const wheelAt = (centre: PlanePoint, radius: number) => ({
  centre_mm: [0, ...centre],
  camber_deg: 0,
  toe_deg: 0,
  loaded_radius_mm: radius,
});

/** A planar four-bar as a corner: the knuckle is the coupler and the wheel centre sits at `centre`. */
export function fourBarCorner(first: Arm, second: Arm, centre: PlanePoint, radius: number) {
  return {
    links: [...armLinks("first", first), ...armLinks("second", second), guideLink(first)],
    wheel: wheelAt(centre, radius),
  };
}

/** A planar strut with a lower arm as a corner. */
export function planarStrutCorner(
  strut: { readonly top: PlanePoint; readonly axisPoint: PlanePoint },
  lower: Arm,
  centre: PlanePoint,
  radius: number,
) {
  return {
    links: [...armLinks("lower", lower), guideLink(lower)],
    strut: { top_mm: [0, ...strut.top], axis_point_mm: [0, ...strut.axisPoint] },
    wheel: wheelAt(centre, radius),
  };
}

/** Lengths of a planar four-bar with the crank at the ground's first end. */
export interface FourBar {
  readonly ground: number;
  readonly crank: number;
  readonly coupler: number;
  readonly rocker: number;
}

/** Angle of the coupler at a crank angle by two circles, radians from the ground line; one of two branches. */
export function couplerAngle({ ground, crank, coupler, rocker }: FourBar, at: number, crossed: boolean): number {
  const dx = ground - crank * Math.cos(at);
  const dy = -crank * Math.sin(at);
  const distance = Math.hypot(dx, dy);
  const corner = Math.acos((coupler ** 2 + distance ** 2 - rocker ** 2) / (2 * coupler * distance));
  return Math.atan2(dy, dx) + (crossed ? -corner : corner);
}
