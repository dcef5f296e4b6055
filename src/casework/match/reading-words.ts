import { degreesFromRadians, mmFromMetres } from "#quantity";
import { formatNumber } from "../fault/format-figure.ts";
import type { Figure } from "../fault-effect.ts";
import type { MatchAsked } from "../match.ts";

const degrees = (radians: number): string => `${formatNumber(degreesFromRadians(radians), 2)}°`;

/** "ride height", "40 mm of bump" */
export const heightWords = (travel: number): string => {
  const mm = mmFromMetres(Math.abs(travel));
  return mm < 0.5 ? "ride height" : `${formatNumber(mm, 0)} mm of ${travel > 0 ? "bump" : "droop"}`;
};

/** Everything that was read, with its plus or minus, as inputs of a figure. */
export function readingWords({ readings, lengths, u, family, corner }: MatchAsked): Figure["inputs"] {
  const links = family[corner.startsWith("front") ? "front" : "rear"].links;
  return [
    ...readings.map(({ travel, camber, toe }) => ({
      label: `At ${heightWords(travel)} (±${formatNumber(2 * mmFromMetres(u.travel), 1)} mm)`,
      value: [
        ...(camber === null ? [] : [`camber ${degrees(camber)} ±${degrees(2 * u.camber)}`]),
        ...(toe === null ? [] : [`toe ${degrees(toe)} ±${degrees(2 * u.toe)}`]),
      ].join(", "),
    })),
    ...(u.heightBase === 0
      ? []
      : [{ label: "All heights, one error", value: `±${formatNumber(2 * mmFromMetres(u.heightBase), 1)} mm` }]),
    ...(u.bodyBase === 0
      ? []
      : [
          {
            label: "Points of the body, one error of what is on file",
            value: `±${formatNumber(2 * mmFromMetres(u.bodyBase), 1)} mm`,
          },
        ]),
    ...lengths.map(({ link, length }) => ({
      label: `${links.find(({ name }) => name === link)?.label ?? link}, pin to pin`,
      value: `${formatNumber(mmFromMetres(length), 1)} mm ±${formatNumber(2 * mmFromMetres(u.length), 1)} mm`,
    })),
  ];
}
