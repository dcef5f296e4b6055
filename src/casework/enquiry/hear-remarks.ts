import type { Symptom } from "../suspects/symptom.ts";
import { splitRemarks } from "./split-remarks.ts";
import { suggestSymptoms } from "./suggest-symptoms.ts";

/** Most complaints that are offered for one remark; more are found in the whole list. */
const MOST_FOR_ONE = 4;

/** One thing an owner said, and what it was heard as. */
export interface HeardRemark {
  /** In the owner's own words. */
  readonly words: string;
  /** True once a complaint was chosen that these words sound like, or one that no other words sound like. */
  readonly isHeard: boolean;
  /** Complaints these words sound like and nobody has chosen, the likeliest first; none where it is heard. */
  readonly offered: readonly Symptom[];
}

/**
 * Everything an owner said, remark by remark, and which of it has been taken up.
 * @param chosen ids of the complaints that were chosen
 */
export function hearRemarks(
  words: string,
  symptoms: readonly Symptom[],
  chosen: readonly string[],
): readonly HeardRemark[] {
  const remarks = splitRemarks(words).map((said) => ({ said, like: suggestSymptoms(said, symptoms) }));
  const sounding = new Set(remarks.flatMap(({ like }) => like.map(({ id }) => id)));
  // A complaint chosen from the whole list belongs to words the table does not know.
  let unmatched = chosen.filter((id) => !sounding.has(id)).length;
  return remarks.map(({ said, like }) => {
    let isHeard = like.some(({ id }) => chosen.includes(id));
    if (!isHeard && like.length === 0 && unmatched > 0) {
      isHeard = true;
      unmatched -= 1;
    }
    return { words: said, isHeard, offered: isHeard ? [] : like.slice(0, MOST_FOR_ONE) };
  });
}

/** What of an owner's words was not taken up, quoted; "" where everything was. */
export function notTakenUpWords(words: string, symptoms: readonly Symptom[], chosen: readonly string[]): string {
  const left = hearRemarks(words, symptoms, chosen).filter(({ isHeard }) => !isHeard);
  return left.length === 0 ? "" : `Not taken up yet: ${left.map((one) => `\u201c${one.words}\u201d`).join("; ")}.`;
}
