import { degreesFromRadians } from "#quantity";
import { type AssumedFigure, type CornerAssembly, isAssumed, leftOutOrigin } from "#vehicle";
import { formatNumber } from "./format-figure.ts";

/** Figures of the whole car or of this axle that the computation takes, as words, where nobody has entered them. */
const assumedOf = (assembly: CornerAssembly, figures: readonly (readonly [AssumedFigure, string])[]): string => {
  const words = figures.flatMap(([figure, name]) => (isAssumed(assembly, figure) ? [name] : []));
  return words.length === 0 ? "" : `${words.join(", ")} assumed, ${leftOutOrigin}`;
};

const behind = (words: string): string => (words === "" ? "" : `; ${words}`);

/** What of the load on a wheel nobody has entered: "; kerb mass assumed, ..."; "" where all of it was. */
export const wheelLoadOrigin = (assembly: CornerAssembly): string =>
  behind(
    assumedOf(assembly, [
      ["kerb-mass", "kerb mass"],
      ["front-weight-share", "weight on the front"],
    ]),
  );

/** That a figure of this axle is the template's; "" where it was entered. */
export const templateOrigin = (assembly: CornerAssembly, what: "spring-rate" | "set-angles"): string =>
  isAssumed(assembly, `${assembly.axle}-${what}`) ? "; assumed, from the template" : "";

/** What a template was scaled to that nobody has entered; "" where all of it was, or nothing is from a template. */
export const scaledOrigin = (assembly: CornerAssembly): string => {
  const { axle, rung } = assembly;
  if (rung !== "scaled") return "";
  const assumed = assumedOf(assembly, [
    [`${axle}-layout`, "layout"],
    ["wheelbase", "wheelbase"],
    [`${axle}-track`, "track"],
    [`${axle}-tyre-size`, "tyre size"],
    [`${axle}-height`, "height as built"],
  ]);
  return `; from the template, scaled${behind(assumed)}`;
};

/** Camber and toe a wheel is set to at ride height. */
export const setAngles = ({ wheel }: CornerAssembly): string =>
  `camber ${formatNumber(degreesFromRadians(wheel.camber), 2)}°, toe ${formatNumber(degreesFromRadians(wheel.toe), 2)}°`;
