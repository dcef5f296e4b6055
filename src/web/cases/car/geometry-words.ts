import type { Family } from "../../car.ts";
import { rungWords } from "../../effect/rung-words.ts";

/** What may be told from a geometry so well known. */
const TELLS = {
  layout: "positions, lists and tests, no curves",
  scaled: "tendencies with their band, no more",
  measured: "all whose sign is sure, with bands",
  matched: "all whose sign is sure, in narrower bands",
} as const;

const knownWords = ({ rung }: Family["front"], invented: boolean): string =>
  `${rungWords(rung, invented)}: ${TELLS[rung]}`;

/** The same words as on the pages of the car line: nobody has measured an invented one. */
export const geometryWords = ({ front, rear, invented }: Family): string => {
  const [ahead, behind] = [knownWords(front, invented), knownWords(rear, invented)];
  const said = ahead === behind ? ahead : `front ${ahead}; rear ${behind}`;
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
};
