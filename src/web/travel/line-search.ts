import { type TravelFigure, travelFigureForms } from "#casework";

/** What of curves over travel stands in an address: how far the body is lowered in one line, and which figures are drawn. */
export interface LineSearch {
  readonly lowered_mm?: number;
  readonly first?: TravelFigure;
  readonly second?: TravelFigure;
}

/** More lines than that cannot be told apart. */
export const MOST_LINES = 4;
/** How far a body is lowered at most, mm: beyond it the stops of most cars are near (invented). */
const MOST_LOWERED_MM = 60;

const numberWithin = (value: unknown, low: number, high: number): number | null => {
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof number === "number" && number >= low && number <= high ? number : null;
};

/** Reads the lines of an address; what cannot be read is left out. */
export const readLineSearch = (search: Record<string, unknown>): LineSearch => {
  const figure = (value: unknown) => travelFigureForms.find((form) => form.figure === value)?.figure;
  const [first, second] = [figure(search.first), figure(search.second)];
  const lowered = numberWithin(search.lowered_mm, 1, MOST_LOWERED_MM);
  return {
    ...(lowered === null ? {} : { lowered_mm: lowered }),
    ...(first === undefined ? {} : { first }),
    ...(second === undefined ? {} : { second }),
  };
};

/** The figures an address asks for; toe and camber where it names none. */
export const figuresOf = ({ first, second }: LineSearch): readonly [TravelFigure, TravelFigure] => [
  first ?? "toe",
  second ?? "camber",
];
