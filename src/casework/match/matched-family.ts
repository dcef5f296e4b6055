import { type Axle, assembleCorner, axleAndSide, type Family, type HardPoint } from "#vehicle";
import type { CornerMatch } from "../match.ts";

/**
 * A copy of a car line with the points of one axle as they were matched and the deviation left along each coordinate, its
 * rung matched, and how the errors left hang together, so that its bands are those of the match; both sides are moved alike.
 * Nothing else is changed.
 */
export function takeOverMatch(
  family: Family,
  match: CornerMatch,
  copy: { readonly id: string; readonly name: string },
): Family {
  const { axle: axleName } = axleAndSide(match.corner);
  const assembly = assembleCorner(family, `${axleName}-left`);
  const moved = (point: HardPoint, index: number | undefined): HardPoint => {
    const name = index === undefined ? undefined : assembly.points[index]?.name;
    const to = match.points.find((one) => one.name === name);
    return to === undefined ? point : { ...point, at: [...to.at] as unknown as HardPoint["at"], sd: [...to.sd] };
  };
  const axle = family[axleName];
  const own = (name: string) => assembly.links.find((link) => link.name === name);
  const matched: Axle = {
    ...axle,
    rung: "matched",
    correlation: match.correlation,
    links: axle.links.map((link) => ({
      ...link,
      inner: moved(link.inner, own(link.name)?.inner.point),
      outer: moved(link.outer, own(link.name)?.outer.point),
    })),
    ...(axle.strut === undefined
      ? {}
      : {
          strut: {
            ...axle.strut,
            top: moved(axle.strut.top, assembly.strut?.top.point),
            axisPoint: moved(axle.strut.axisPoint, assembly.strut?.axisPoint.point),
          },
        }),
    ...(axle.trailingArm === undefined
      ? {}
      : { trailingArm: { ...axle.trailingArm, bush: moved(axle.trailingArm.bush, assembly.trailingArm?.bush.point) } }),
  };
  return { ...family, ...copy, [axleName]: matched };
}
