import { TravelBand } from "#engines/linkage";
import { metresFromMm, mmFromMetres } from "#quantity";
import { type AxleName, type Family, isOfBodies } from "#vehicle";
import { modelCorner, pointIndex } from "../fault/corner-model.ts";
import { findSettlingReading, isSignSure } from "../fault/settle.ts";
import type { RankedCoordinate, RankedFigure } from "../points.ts";
import { cornerOutputs } from "./corner-outputs.ts";
import { AXIS_WORDS, largestShares } from "./largest-shares.ts";

/** Coordinates named for each figure. */
const MOST_NAMED = 5;

/**
 * The figures of an axle's left corner that its hard points decide, each with its deviation from what the sheet says of
 * every point, whether it can be printed, and the coordinates that do most to it. Rigid links, exact derivatives.
 * @returns no figure for a travel the linkage does not reach, and none of a linkage of several bodies
 */
export function rankCoordinates(family: Family, axle: AxleName): readonly RankedFigure[] {
  if (isOfBodies(family[axle])) return [];
  const { assembly, geometry, deviations, correlations } = modelCorner(family, `${axle}-left`);
  const band = new TravelBand(geometry, deviations, correlations);
  const { jets } = band;
  return cornerOutputs(assembly).flatMap((output): readonly RankedFigure[] => {
    const at = band.solve(output.travel);
    if ("foldAt" in at) return [];
    const figure = output.of(at);
    const value = output.show(figure.value);
    const sd = output.show(figure.sd);
    const printable = isSignSure(value, sd);
    const coordinates = largestShares(jets, figure.jet, MOST_NAMED).flatMap(
      ({ point, axis, share, parameter }): readonly RankedCoordinate[] => {
        const named = assembly.points[pointIndex(assembly, jets.linkage.mechanism.pointNames[point] ?? "")];
        if (named === undefined) return [];
        const perMm = output.show(figure.jet[parameter + 1] as number) * metresFromMm(1);
        return [{ point: named.name, axis, axisWords: AXIS_WORDS[axis], share, perMm }];
      },
    );
    return [
      {
        key: output.key,
        label: output.label,
        unit: output.unit,
        travel: mmFromMetres(output.travel),
        value,
        sd,
        printable,
        settle: printable ? null : findSettlingReading(jets, figure.jet, assembly),
        coordinates,
      },
    ];
  });
}
