import type { Finding } from "#numeric";
import { entriesOf, isNumber, isObject, type Loose, type Point, pointOf } from "./loose-corner.ts";
import { unitFinding as finding, shownFigure as shown } from "./unit-finding.ts";

/** A joint nearer to the origin than this in every direction was typed in metres, where the wheel stands farther (mm). */
const NEAREST_JOINT = 5;
/** No joint of a car is this near to the middle of the car and to the ground at once (mm, invented). */
const LOWEST_INMOST = 95;
/** A wheel farther from the middle of the car than this is given in millimetres (mm). */
const WHEEL_IN_MILLIMETRES = 50;
/** A joint in another unit comes nearer to its wheel than this share of the way when its unit is turned (invented). */
const NEARER = 0.8;
/** How near the centre's height and the radius of a wheel are to each other, as a share (invented). */
const NEAR_RADIUS = 0.25;

interface Unit {
  readonly name: string;
  readonly inMm: number;
}
const METRES: Unit = { name: "metres", inMm: 1000 };
const SMALLER_UNITS: readonly Unit[] = [
  { name: "inches", inMm: 25.4 },
  { name: "centimetres", inMm: 10 },
];

const distance = (a: Point, b: Point, scale: number): number => Math.hypot(...a.map((c, i) => c * scale - (b[i] ?? 0)));

/** A place all of whose figures are so small that they can only be metres. */
const inMetres = (p: Point): boolean => p.some((c) => c !== 0) && p.every((c) => Math.abs(c) < NEAREST_JOINT);

/** The units a joint may have been typed in, told by the wheel in millimetres that it belongs to; none where it is that one. */
function unitsOfJoint(p: Point, wheel: Point): readonly Unit[] {
  if (inMetres(p)) return [METRES];
  const [, y, z] = p;
  if (Math.max(Math.abs(y), Math.abs(z)) >= LOWEST_INMOST || Math.min(Math.abs(y), Math.abs(z)) < 1) return [];
  const far = distance(p, wheel, 1);
  return SMALLER_UNITS.map((unit) => ({ unit, off: distance(p, wheel, unit.inMm) }))
    .filter(({ unit, off }) => off < NEARER * far && Math.abs(y) * unit.inMm <= Math.abs(wheel[1]))
    .sort((one, other) => one.off - other.off)
    .map(({ unit }) => unit);
}

const pointFinding = (path: string, p: Point, units: readonly Unit[], needed: string): Finding =>
  finding(
    path,
    `[${p.join(", ")}]`,
    `[x, y, z] in millimetres${needed}`,
    `It looks like ${units
      .map(({ name, inMm }) => `${name}: in millimetres it would be [${p.map((c) => shown(c * inMm)).join(", ")}]`)
      .join(", or ")}.`,
  );

/** The unit a length was typed in where another length in millimetres is about the same; null where none fits. */
const unitBeside = (length: number, other: number): Unit | null =>
  SMALLER_UNITS.find(({ inMm }) => Math.abs(length * inMm - other) < NEAR_RADIUS * other) ?? null;

/** The radius of the wheel in another unit than the height of its centre. */
function checkRadius(radius: unknown, centre: Point | null, path: string): Finding[] {
  if (!isNumber(radius) || radius <= 0 || !centre) return [];
  const unit = radius < NEAREST_JOINT ? METRES : radius < LOWEST_INMOST ? unitBeside(radius, centre[2]) : null;
  if (!unit) return [];
  const needed = "the loaded radius of a wheel in millimetres";
  const hint = `It looks like ${unit.name}: in millimetres it would be ${shown(radius * unit.inMm)}.`;
  return [finding(path, shown(radius), needed, hint)];
}

/** The unit the wheel centre was typed in, told by the radius in millimetres; null where it is that one. */
function unitOfWheel(centre: Point, radius: unknown): Unit | null {
  if (inMetres(centre)) return METRES;
  if (!isNumber(radius) || radius < LOWEST_INMOST || Math.abs(centre[1]) >= LOWEST_INMOST) return null;
  const unit = unitBeside(centre[2], radius);
  return unit && Math.abs(centre[1]) * unit.inMm > radius ? unit : null;
}

type Placed = readonly [path: string, at: Point];

/** Every joint of a corner that is a point, with its path. */
function jointsOf(doc: Loose): readonly Placed[] {
  const [strut, arm] = [doc.strut, doc.trailing_arm].map((part) => (isObject(part) ? part : {}));
  const joints: readonly (readonly [string, unknown])[] = [
    ...entriesOf(doc.links).flatMap(([i, link]) =>
      ["inner_mm", "outer_mm"].map((key) => [`links[${i}].${key}`, link[key]] as const),
    ),
    ["strut.top_mm", strut?.top_mm],
    ["strut.axis_point_mm", strut?.axis_point_mm],
    ["trailing_arm.bush_mm", arm?.bush_mm],
  ];
  return joints.flatMap(([path, value]) => {
    const p = pointOf(value);
    return p ? [[path, p] as const] : [];
  });
}

/** Joints in metres, inches or centimetres beside a wheel in millimetres, a wheel so beside joints in millimetres, or all in metres. */
export const checkMixedLengths = (doc: Loose): Finding[] => checkBesideWheel(doc.wheel, jointsOf(doc), (key) => key);

/** The same of a layout of bodies, by the points of its list. `at` gives the path of a key. */
export const checkLayoutLengths = (sheet: Loose, at: (key: string) => string): Finding[] =>
  checkBesideWheel(
    sheet.wheel,
    entriesOf(sheet.points).flatMap(([i, { at_mm }]) => {
      const p = pointOf(at_mm);
      return p ? [[at(`points[${i}].at_mm`), p] as const] : [];
    }),
    at,
  );

function checkBesideWheel(value: unknown, joints: readonly Placed[], at: (key: string) => string): Finding[] {
  const wheel = isObject(value) ? value : {};
  const centre = pointOf(wheel.centre_mm);
  const small = checkRadius(wheel.loaded_radius_mm, centre, at("wheel.loaded_radius_mm"));
  if (!centre) return small;
  const wheelUnit = unitOfWheel(centre, wheel.loaded_radius_mm);
  if (wheelUnit)
    return [pointFinding(at("wheel.centre_mm"), centre, [wheelUnit], ", as all lengths here are"), ...small];
  if (Math.abs(centre[1]) < WHEEL_IN_MILLIMETRES) return small;
  const strays = joints.flatMap(([path, p]) => {
    const units = unitsOfJoint(p, centre);
    return units.length > 0 ? [pointFinding(path, p, units, ", as the wheel centre is")] : [];
  });
  return [...strays, ...small];
}
