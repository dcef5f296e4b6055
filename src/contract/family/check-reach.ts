import type { Finding } from "#numeric";
import { distanceMm } from "./check-points.ts";
import { CONFIRM_POINTS, familyFinding, placeWords } from "./family-finding.ts";
import { likelySlip } from "./likely-slip.ts";
import { asObject, type LooseAxle, placeOf } from "./loose-axle.ts";

type Triple = readonly [number, number, number];

/**
 * How far a hard point may lie from the wheel centre, in heights of the wheel centre over the ground (all invented).
 * The widest templates and demo families use four fifths of each bound at most; a slip of a metre passes none.
 */
const KNUCKLE_REACH = 1.5;
const SEAT_REACH = 2;
const FARTHEST_OUTWARD = 0.5;
/** How low a joint may hang: no car carries one lower than this of its wheel centre's height (invented). */
const LOWEST_JOINT = 0.2;
/** How far ahead of or behind the wheel centre a knuckle reaches; a trailing arm reaches farther. */
const KNUCKLE_AHEAD = 0.9;
const HIGHEST_JOINT = 1.5;
const HIGHEST_SEAT = 2.5;
/** How far ahead of or behind the wheel centre a joint in the body may lie, mm (invented). */
const FARTHEST_AHEAD_MM = 1100;
/** How far past the middle of the car a left point may still lie, in the same measure. */
const PAST_MIDDLE = 0.5;

/** Where a point may lie: near the wheel centre in any direction, or within the room of the parts held in the body. */
type Room = { readonly reach: number; readonly ahead: number | null } | { readonly highest: number };

interface Point {
  readonly path: string;
  readonly place: Triple | undefined;
  /** Null: only that it lies above the ground is asked. */
  readonly room: Room | null;
}

/**
 * Hard points no car has: below the ground, or out of reach of their wheel; one finding per point.
 * @param fromWheel false: the wheel itself is in doubt, or somebody has confirmed the points; only the ground is a bound then
 * @param places where points lie other than in the sheet, by their path behind the name of the axle
 */
export function checkReach(axle: LooseAxle, fromWheel: boolean, places?: ReadonlyMap<string, Triple>): Finding[] {
  const centre = fromWheel ? axle.wheel?.centre_mm : undefined;
  return pointsOf(axle).flatMap(({ path, place: typed, room }) => {
    const place = places?.get(path.slice(axle.name.length + 1)) ?? typed;
    if (!place) return [];
    const missed = (one: Triple): string | null =>
      one[2] < 0
        ? "z of 0 or more, as z counts up from the ground the car stands on"
        : centre && room
          ? outOfRoom(one, centre, room)
          : null;
    const needed = missed(place);
    if (needed === null) return [];
    const hint = likelySlip(place, (one) => missed(one) === null);
    return place[2] < 0
      ? [familyFinding("point-below-ground", path, placeWords(place), needed, hint)]
      : [familyFinding("point-out-of-reach", path, placeWords(place), needed, `${hint} ${CONFIRM_POINTS}`)];
  });
}

/** What a place of the left wheel would have to keep to, where it does not; else null. */
function outOfRoom(place: Triple, centre: Triple, room: Room): string | null {
  const radius = centre[2];
  if (place[2] < LOWEST_JOINT * radius)
    return `z of at least ${mm(LOWEST_JOINT * radius)}, a fifth of the height of the wheel centre`;
  if ("reach" in room) {
    const away = distanceMm(place, centre);
    if (room.ahead !== null && Math.abs(place[0] - centre[0]) > room.ahead * radius)
      return `x within ${mm(room.ahead * radius)} of the wheel centre, ${mm(centre[0] - room.ahead * radius)} to ${mm(centre[0] + room.ahead * radius)}`;
    return away <= room.reach * radius
      ? null
      : `a place at most ${mm(room.reach * radius)} from the wheel centre ${placeWords(centre)}; this one is ${mm(away)} away`;
  }
  const highest = centre[2] + room.highest * radius;
  if (place[2] > highest)
    return `z of at most ${mm(highest)}, measured by the height of the wheel centre, ${mm(radius)}`;
  const ahead = FARTHEST_AHEAD_MM;
  if (Math.abs(place[0] - centre[0]) > ahead)
    return `x within ${mm(ahead)} of the wheel centre, ${mm(centre[0] - ahead)} to ${mm(centre[0] + ahead)}`;
  const [inmost, outmost] = [-PAST_MIDDLE * radius, centre[1] + FARTHEST_OUTWARD * radius];
  return place[1] < inmost || place[1] > outmost
    ? `y of ${mm(inmost)} to ${mm(outmost)}, from the middle of the car to the left wheel`
    : null;
}

function mm(value: number): string {
  return `${Math.round(value)} mm`;
}

function pointsOf(axle: LooseAxle): Point[] {
  const { name } = axle;
  const joint: Room = { highest: HIGHEST_JOINT };
  const seat: Room = { highest: HIGHEST_SEAT };
  const knuckle: Room = { reach: KNUCKLE_REACH, ahead: axle.hasTrailingArm ? null : KNUCKLE_AHEAD };
  const moving: Room = { reach: SEAT_REACH, ahead: null };
  const bar = asObject(axle.raw.bar);
  return [
    ...axle.links.flatMap(({ inner, outer }, index): Point[] => [
      { path: `${name}.links[${index}].inner_mm`, place: inner, room: joint },
      { path: `${name}.links[${index}].outer_mm`, place: outer, room: knuckle },
    ]),
    { path: `${name}.strut.top_mm`, place: axle.strut?.top, room: seat },
    { path: `${name}.strut.axis_point_mm`, place: axle.strut?.axisPoint, room: moving },
    { path: `${name}.trailing_arm.bush_mm`, place: axle.trailingArm?.bush, room: joint },
    ...(["spring", "damper"] as const).flatMap((part): Point[] => {
      const { body, seat: on } = axle[part];
      const end = on && on.on !== "link" ? placeOf(on.moving_mm) : undefined;
      return [
        { path: `${name}.${part}.body_mm`, place: body, room: seat },
        { path: `${name}.${part}.seat.moving_mm`, place: end, room: moving },
      ];
    }),
    ...["body_bush_mm", "link_upper_mm", "link_lower_mm"].map(
      (key): Point => ({ path: `${name}.bar.${key}`, place: placeOf(bar[key]), room: joint }),
    ),
  ];
}
