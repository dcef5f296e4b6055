/** Ends one remark of an owner and begins the next. */
const BETWEEN = /[.;!?\n]+|,|\s+(?:and|but|also|plus)\s+/i;

/** What a remark begins with that only says when another is so. */
const WHEN_ONLY = /^(?:when|whenever|if|while|only|especially|mostly|mainly|worse|more|less|then|it gets|gets)\b/i;

/** What a remark begins with that says since when or from what speed, unless it goes on to say what. */
const SINCE = /^(?:since|after|before|at|from|above|below|under|around|about)\b/i;
const MOST_WORDS_OF_SINCE = 5;

/** Words that say nothing of the car. */
const CIVIL = new Set(
  "please thanks thank you hello hi kindly can could would check have a look at it the car my mine for me again soon asap".split(
    " ",
  ),
);

const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[\p{Letter}\d']+/gu) ?? [];

const isWhenOnly = (part: string): boolean =>
  WHEN_ONLY.test(part) || (SINCE.test(part) && wordsOf(part).length <= MOST_WORDS_OF_SINCE);

const isCivil = (remark: string): boolean => wordsOf(remark).every((word) => CIVIL.has(word));

/**
 * The single things an owner says, in their own words and order: "it pulls when I brake, and something clunks" are two.
 * What only says when or since when ("when I brake") stays with what it is said of.
 */
export function splitRemarks(words: string): readonly string[] {
  const parts = words
    .split(BETWEEN)
    .map((part) => part.trim().replace(/^(?:and|but|also|plus)\s+/i, ""))
    .filter((part) => part !== "" && !isCivil(part));
  const remarks: string[] = [];
  let opening: string | null = null;
  for (const part of parts) {
    const last = remarks.length - 1;
    if (!isWhenOnly(part)) {
      remarks.push(opening === null ? part : `${opening}, ${part}`);
      opening = null;
    } else if (last >= 0) remarks[last] = `${remarks[last]}, ${part}`;
    else opening = opening === null ? part : `${opening}, ${part}`;
  }
  return opening === null ? remarks : [...remarks, opening];
}
