import { type BarPoints, computeTwistPerLean, MOST_TWIST_PER_LEAN } from "#engines/linkage";
import type { Finding } from "#numeric";
import { metresFromMm } from "#quantity";
import { geometryOf, placesOf } from "./axle-places.ts";
import { CONFIRM_POINTS, familyFinding } from "./family-finding.ts";
import { bar as barShape } from "./joint-schema.ts";
import { asObject, type LooseAxle, understood } from "./loose-axle.ts";

/** True where nobody has read a point of the axle: what a template gave, of whatever version, is no slip of a pen. */
const isOfTemplate = ({ raw }: LooseAxle): boolean => asObject(raw.defaults).origin === "template";

/** A bar whose levers would turn further than those of any bar: its path or its drop link is wrong. One finding, or none. */
export function checkBar(axle: LooseAxle): Finding[] {
  const sheet = understood(barShape, axle.raw.bar);
  const geometry = axle.pointsConfirmed || !sheet ? null : geometryOf(axle, placesOf(axle));
  if (!sheet || !geometry) return [];
  const place = ([x, y, z]: readonly [number, number, number]) =>
    [metresFromMm(x), metresFromMm(y), metresFromMm(z)] as const;
  const bar: BarPoints = {
    diameter: metresFromMm(sheet.diameter_mm),
    path: sheet.path_mm.map(place),
    bodyBush: place(sheet.body_bush_mm),
    linkUpper: place(sheet.link_upper_mm),
    linkLower: place(sheet.link_lower_mm),
  };
  const turn = computeTwistPerLean(bar, geometry);
  if (turn === null || turn <= MOST_TWIST_PER_LEAN || (isOfTemplate(axle) && Number.isFinite(turn))) return [];
  const got = Number.isFinite(turn)
    ? `levers that turn ${turn.toFixed(1)}° against each other per degree the body leans`
    : "no lever: the bar ends on its own axis";
  return [
    familyFinding(
      "bar-twists-too-far",
      `${axle.name}.bar.path_mm`,
      got,
      `at most ${MOST_TWIST_PER_LEAN}°, as a lever of about 200 mm gives`,
      `The last point of the path is where the drop link is held; look at its x and z, and at link_lower_mm and link_upper_mm. ${CONFIRM_POINTS}`,
    ),
  ];
}
