import { turnsAboutStrut } from "#engines/linkage";
import { type Finding, factorise, makeFactorisation } from "#numeric";
import { familyFinding } from "./family-finding.ts";
import type { LooseAxle } from "./loose-axle.ts";

type Vector = readonly [number, number, number];

/** Below this ratio of the smallest to the largest pivot the constraints count as dependent (invented; sound layouts lie above 0.02). */
const DEPENDENT = 1e-5;

/**
 * Whether the five constraints leave exactly the travel of the wheel at ride height: with the height of the wheel centre
 * held as sixth, their directions must be independent.
 */
export function checkIndependence(axle: LooseAxle): Finding[] {
  const rows = constraintRows(axle);
  if (rows === null || rows.length !== 5) return [];
  if (turnsFreely(axle))
    return [
      familyFinding(
        "links-not-independent",
        `${axle.name}.strut`,
        "a strut line that the lines of all links meet",
        "a tie rod whose line passes the strut line at a distance",
        "As it stands the wheel turns freely about the strut line: look at the tie rod's points and the strut's.",
      ),
    ];
  const f = makeFactorisation(6);
  [...rows, [0, 0, 1, 0, 0, 0]].forEach((row, index) => {
    f.lu.set(row, 6 * index);
  });
  if (factorise(f) && f.pivotRatio > DEPENDENT) return [];
  return [
    familyFinding(
      "links-not-independent",
      `${axle.name}.links`,
      "parts that hold the wheel twice the same way at ride height",
      "five parts each of which holds the wheel in a way of its own, and lets it travel",
      "Look for links that lie in one line or that all meet in one line.",
    ),
  ];
}

/** Whether nothing holds the knuckle of a strut against turning about it; false where a point is not known. */
function turnsFreely({ hasStrut, strut, links }: LooseAxle): boolean {
  const metres = (p: Vector): Vector => scaled(p, 1e-3);
  if (!hasStrut || !strut?.top || !strut.axisPoint) return false;
  const lines = links.flatMap(({ inner, outer }) =>
    inner && outer ? [{ name: "", steered: false, inner: metres(inner), outer: metres(outer) }] : [],
  );
  return (
    lines.length === links.length &&
    turnsAboutStrut({ strut: { top: metres(strut.top), axisPoint: metres(strut.axisPoint) }, links: lines })
  );
}

/** One row (direction, moment about the wheel centre in loaded radii) per constraint; null where a point is not known. */
function constraintRows(axle: LooseAxle): number[][] | null {
  const centre = axle.wheel?.centre_mm;
  if (!centre) return null;
  const rowAt = (place: Vector, direction: Vector): number[] => {
    const arm = scaled(minus(place, centre), 1 / Math.max(centre[2], 1));
    return [...direction, ...cross(arm, direction)];
  };
  const rows: number[][] = [];
  for (const { inner, outer } of axle.links) {
    if (!inner || !outer) return null;
    const direction = unit(minus(outer, inner));
    if (!direction) return null;
    rows.push(rowAt(outer, direction));
  }
  if (axle.hasStrut) {
    if (!axle.strut?.top || !axle.strut.axisPoint) return null;
    const across = perpendiculars(minus(axle.strut.top, axle.strut.axisPoint));
    if (!across) return null;
    const { top } = axle.strut;
    rows.push(...across.map((direction) => rowAt(top, direction)));
  }
  if (axle.hasTrailingArm) {
    const arm = axle.trailingArm;
    if (!arm?.bush || (arm.hasFreeAxis && !arm.freeAxis)) return null;
    const { bush } = arm;
    const held: readonly Vector[] | null = arm.freeAxis
      ? perpendiculars(arm.freeAxis)
      : [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ];
    if (!held) return null;
    rows.push(...held.map((direction) => rowAt(bush, direction)));
  }
  return rows;
}

function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function scaled(a: Vector, factor: number): Vector {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Vector): Vector | null {
  const length = Math.hypot(...a);
  return length > 0 ? scaled(a, 1 / length) : null;
}

/** Two unit vectors across a direction and across each other; null where it has no length. */
function perpendiculars(direction: Vector): readonly [Vector, Vector] | null {
  const along = unit(direction);
  if (!along) return null;
  const first = unit(cross(along, Math.abs(along[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]));
  return first ? [first, cross(along, first)] : null;
}
