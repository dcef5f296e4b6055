import type { Finding } from "#numeric";
import { familyFinding, placeWords } from "./family-finding.ts";
import type { LooseAxle, LooseLink } from "./loose-axle.ts";
import { seatPlace } from "./seat-place.ts";

type Triple = readonly [number, number, number];

/** Two points closer than this are one place, mm: nobody measures finer (invented). */
export const ONE_PLACE_MM = 0.05;

export function distanceMm(a: Triple, b: Triple): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** Points of an axle that coincide though they must not, or do not though they must. */
export function checkPoints(axle: LooseAxle): Finding[] {
  return [
    ...zeroLengthLinks(axle),
    ...armOuterPoints(axle),
    ...coincidentEnds(axle),
    ...strutPoints(axle),
    ...springEnds(axle),
  ];
}

function zeroLengthLinks(axle: LooseAxle): Finding[] {
  return axle.links.flatMap(({ inner, outer }, index) =>
    inner && outer && distanceMm(inner, outer) < ONE_PLACE_MM
      ? [
          familyFinding(
            "zero-length-link",
            `${axle.name}.links[${index}].outer_mm`,
            placeWords(outer),
            "a place away from the inner end",
            "Inner and outer end were given the same numbers.",
          ),
        ]
      : [],
  );
}

function armOuterPoints(axle: LooseAxle): Finding[] {
  const firstOfArm = new Map<string, { readonly index: number; readonly outer: Triple }>();
  return axle.links.flatMap(({ arm, outer }, index) => {
    if (arm === undefined || !outer) return [];
    const first = firstOfArm.get(arm);
    if (!first) {
      firstOfArm.set(arm, { index, outer });
      return [];
    }
    return distanceMm(first.outer, outer) === 0
      ? []
      : [
          familyFinding(
            "arm-outer-points-apart",
            `${axle.name}.links[${index}].outer_mm`,
            placeWords(outer),
            `${placeWords(first.outer)}, as links[${first.index}] of the arm ${arm}`,
            "All legs of one arm end in one joint: give them the same numbers.",
          ),
        ];
  });
}

interface End {
  readonly path: string;
  readonly place: Triple;
  readonly link: LooseLink | null;
  readonly isOuter: boolean;
}

function coincidentEnds(axle: LooseAxle): Finding[] {
  const found: Finding[] = [];
  const twins = new Set<string>();
  axle.links.forEach((one, index) => {
    axle.links.slice(0, index).forEach((other, before) => {
      if (!one.inner || !one.outer || !other.inner || !other.outer) return;
      if (distanceMm(one.inner, other.inner) >= ONE_PLACE_MM || distanceMm(one.outer, other.outer) >= ONE_PLACE_MM)
        return;
      twins.add(`${before} ${index}`);
      found.push(
        familyFinding(
          "coincident-links",
          `${axle.name}.links[${index}]`,
          `both ends of links[${before}]`,
          "a link of its own",
          "Two links in one line hold the wheel once, not twice.",
        ),
      );
    });
  });
  const ends = endsOf(axle);
  ends.forEach((one, index) => {
    for (const other of ends.slice(0, index)) {
      if (distanceMm(one.place, other.place) >= ONE_PLACE_MM || one.link === other.link) continue;
      const sameArm = one.isOuter && other.isOuter && one.link?.arm !== undefined && one.link.arm === other.link?.arm;
      const pair = [other.link, one.link].map((link) => (link ? axle.links.indexOf(link) : -1)).join(" ");
      if (sameArm || twins.has(pair)) continue;
      const hint =
        one.isOuter && other.isOuter
          ? "Links that share their outer joint are one rigid arm: give both the same arm."
          : "Check the numbers of both.";
      found.push(
        familyFinding("coincident-points", one.path, placeWords(one.place), `a place away from ${other.path}`, hint),
      );
    }
  });
  return found;
}

function endsOf(axle: LooseAxle): End[] {
  const ends: End[] = [];
  axle.links.forEach((link, index) => {
    const path = `${axle.name}.links[${index}]`;
    if (link.inner) ends.push({ path: `${path}.inner_mm`, place: link.inner, link, isOuter: false });
    if (link.outer) ends.push({ path: `${path}.outer_mm`, place: link.outer, link, isOuter: true });
  });
  if (axle.trailingArm?.bush)
    ends.push({ path: `${axle.name}.trailing_arm.bush_mm`, place: axle.trailingArm.bush, link: null, isOuter: false });
  return ends;
}

function strutPoints(axle: LooseAxle): Finding[] {
  const { strut } = axle;
  if (!strut?.top || !strut.axisPoint || distanceMm(strut.top, strut.axisPoint) >= ONE_PLACE_MM) return [];
  return [
    familyFinding(
      "coincident-strut-points",
      `${axle.name}.strut.axis_point_mm`,
      placeWords(strut.axisPoint),
      "a place away from the top, on the line of the strut",
      "Any point of the damper's rod or tube will do, best its lowest.",
    ),
  ];
}

function springEnds(axle: LooseAxle): Finding[] {
  return (["spring", "damper"] as const).flatMap((part) => {
    const { body } = axle[part];
    const moving = seatPlace(axle, part);
    return body && moving && distanceMm(body, moving) < ONE_PLACE_MM
      ? [
          familyFinding(
            "zero-length-spring",
            `${axle.name}.${part}.body_mm`,
            placeWords(body),
            "a place away from its moving end",
            "Body end and moving end were given the same numbers.",
          ),
        ]
      : [];
  });
}
