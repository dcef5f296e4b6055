import type { Rung } from "../car.ts";

const WORDS: Readonly<Record<Rung, string>> = {
  layout: "layout only",
  scaled: "scaled from a template",
  measured: "measured on a car",
  matched: "matched to this car's readings",
};

/** How well a geometry is known, in words; nobody has measured an invented one, its figures only have such tolerances. */
export const rungWords = (rung: Rung, invented: boolean): string =>
  invented && (rung === "measured" || rung === "matched")
    ? `invented, to the tolerances of a ${rung} one`
    : WORDS[rung];
