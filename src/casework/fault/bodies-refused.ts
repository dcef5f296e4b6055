import type { Finding } from "#numeric";
import { type AxleName, type Family, isOfBodies } from "#vehicle";

/**
 * What says that a page does not compute with a linkage of several bodies yet; nothing where every asked axle has one knuckle.
 * @param needs what it would take, in words
 */
export function refuseBodies(family: Family, axles: readonly AxleName[], needs: string): readonly Finding[] {
  return axles.flatMap((axle): Finding[] => {
    const own = family[axle];
    if (!isOfBodies(own)) return [];
    return [
      {
        code: "not-for-bodies",
        path: axle,
        got: `the ${axle} axle: ${own.bodies.layout.name}`,
        needed: "an axle with one knuckle: five links, double wishbone, strut or trailing arm",
        hint: `Not for a layout of several bodies yet: ${needs}. Underside, Geometry and Over travel compute with it.`,
      },
    ];
  });
}
