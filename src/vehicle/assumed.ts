/** What a person may leave out where a car line is begun from a silhouette: an ordinary saloon's is taken then. */
export const leftOutFigures = [
  "front-layout",
  "rear-layout",
  "wheelbase",
  "front-track",
  "rear-track",
  "front-tyre-size",
  "rear-tyre-size",
  "kerb-mass",
  "front-weight-share",
  "driven-axle",
  "front-height",
  "rear-height",
] as const;

/** What the templates give that a silhouette does not ask for. */
export const templateFigures = [
  "centre-of-mass-height",
  "brake-shares",
  "front-spring-rate",
  "rear-spring-rate",
  "front-unsprung-mass",
  "rear-unsprung-mass",
  "front-set-angles",
  "rear-set-angles",
] as const;

/** Every figure of a car line that can be one nobody has entered, by the name a file uses. */
export const assumableFigures = [...leftOutFigures, ...templateFigures] as const;

/** A figure of a car line that nobody has entered. */
export type AssumedFigure = (typeof assumableFigures)[number];

/** A car line, or a corner of one, that says what of it nobody has entered. */
interface Assumptions {
  readonly assumed?: readonly AssumedFigure[];
}

/** Where what was left out comes from. */
export const leftOutOrigin = "nobody has entered it: an ordinary saloon's, invented";

/** Whether a figure stands for what nobody has entered. */
export const isAssumed = ({ assumed }: Assumptions, figure: AssumedFigure): boolean =>
  assumed?.includes(figure) ?? false;

/** What stands behind a figure's value: " (assumed)", or nothing where it was entered. */
export const assumedMark = (of: Assumptions, figure: AssumedFigure): "" | " (assumed)" =>
  isAssumed(of, figure) ? " (assumed)" : "";

/**
 * What is to be said beside every figure of axles whose layout nobody has told, as a sentence with a space behind it;
 * "" where it was told.
 */
export const layoutDoubt = (of: Assumptions, axles: readonly ("front" | "rear")[]): string => {
  const untold = axles.filter((axle) => isAssumed(of, `${axle}-layout`));
  if (untold.length === 0) return "";
  const [which, theirs] =
    untold.length === 1 ? [`the ${untold[0]} axle`, "its layout is"] : ["either axle", "the layouts are"];
  return `Nobody has said what ${which} looks like: ${theirs} assumed, and if it is another, a twist beam or a live axle, nothing said of it here holds. `;
};
