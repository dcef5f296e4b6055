import { conditionPathWords } from "../effect/condition-path-words.ts";

/** What the page calls the parts of a question that only a layout has. */
const WORDS: Readonly<Record<string, string>> = {
  "fault.part": "Place",
  "fault.low": "As firm, at least",
  "fault.hardness.from": "Hardness of the old part",
  "fault.hardness.to": "Hardness of the new part",
  "fault.factor_low": "As firm, at least",
  "fault.play_mm": "Play, side to side",
};

/** A finding's place in the words of the page; null where it has none: then it is a place in the file. */
export const layoutPathWords = (path: string): string | null => WORDS[path] ?? conditionPathWords(path);
