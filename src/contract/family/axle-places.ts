import type { CornerGeometry } from "#engines/linkage";
import { metresFromMm, radiansFromDegrees } from "#quantity";
import { type LooseAxle, placeOf } from "./loose-axle.ts";

export type Place = readonly [x: number, y: number, z: number];

/** The hard points of an axle in mm, by the path they have in its sheet behind the name of the axle. */
export type AxlePlaces = ReadonlyMap<string, Place>;

/** Every hard point of the linkage, its spring and its damper that can be understood. */
export function placesOf(axle: LooseAxle): AxlePlaces {
  const movingEnd = (part: "spring" | "damper"): Place | undefined => {
    const { seat } = axle[part];
    return seat && seat.on !== "link" ? placeOf(seat.moving_mm) : undefined;
  };
  const entries: (readonly [string, Place | undefined])[] = [
    ...axle.links.flatMap(({ inner, outer }, index): [string, Place | undefined][] => [
      [innerPath(index), inner],
      [outerPath(index), outer],
    ]),
    ["strut.top_mm", axle.strut?.top],
    ["strut.axis_point_mm", axle.strut?.axisPoint],
    ["trailing_arm.bush_mm", axle.trailingArm?.bush],
    ["spring.body_mm", axle.spring.body],
    ["spring.seat.moving_mm", movingEnd("spring")],
    ["damper.body_mm", axle.damper.body],
    ["damper.seat.moving_mm", movingEnd("damper")],
  ];
  return new Map(entries.filter((entry): entry is readonly [string, Place] => entry[1] !== undefined));
}

export const innerPath = (index: number): string => `links[${index}].inner_mm`;
export const outerPath = (index: number): string => `links[${index}].outer_mm`;

/** The same places with one of them elsewhere; the outer end the legs of an arm share moves as one joint. */
export function withPlace(axle: LooseAxle, places: AxlePlaces, path: string, place: Place): AxlePlaces {
  const moved = new Map(places).set(path, place);
  const arm = axle.links.find((_, index) => outerPath(index) === path)?.arm;
  axle.links.forEach((link, index) => {
    if (arm !== undefined && link.arm === arm) moved.set(outerPath(index), place);
  });
  return moved;
}

/** The rigid linkage these places make, SI; null where the wheel or a place of it is not known. */
export function geometryOf(axle: LooseAxle, places: AxlePlaces): CornerGeometry | null {
  const { wheel, strut, trailingArm } = axle;
  if (!wheel) return null;
  const at = (path: string): [number, number, number] | null => {
    const [x, y, z] = places.get(path) ?? [];
    return x === undefined || y === undefined || z === undefined
      ? null
      : [metresFromMm(x), metresFromMm(y), metresFromMm(z)];
  };
  const links = axle.links.map((link, index) => {
    const [inner, outer] = [at(innerPath(index)), at(outerPath(index))];
    return inner && outer ? { name: link.name ?? String(index), inner, outer, steered: link.steered } : null;
  });
  const known = links.filter((link) => link !== null);
  const [top, axisPoint, bush] = [at("strut.top_mm"), at("strut.axis_point_mm"), at("trailing_arm.bush_mm")];
  if (known.length < links.length || (strut && !(top && axisPoint)) || (trailingArm && !bush)) return null;
  const [x, y, z] = wheel.centre_mm;
  const camber = radiansFromDegrees(wheel.camber_deg);
  const freeAxis = trailingArm?.freeAxis;
  return {
    wheel: {
      centre: [metresFromMm(x), metresFromMm(y), metresFromMm(z)],
      camber,
      toe: radiansFromDegrees(wheel.toe_deg),
      loadedRadius: metresFromMm(z / Math.cos(camber)),
    },
    links: known,
    ...(top && axisPoint && { strut: { top, axisPoint } }),
    ...(bush && { trailingArm: { bush, ...(freeAxis && { freeAxis }) } }),
  };
}
