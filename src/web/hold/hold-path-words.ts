/** What the page calls the parts of a question that a finding names by path. */
const WORDS: Readonly<Record<string, string>> = {
  position: "Joint",
  "hand.position": "Joint",
  held: "Held",
  way: "By",
  "hand.way": "By",
  "way.moment": "Hands",
  "way.force": "Hand or bar",
  "fault.play": "Play",
  "fault.grade": "Torn grade",
};

/** A finding's place in the words of the page; null where it has none. */
export const holdPathWords = (path: string): string | null => WORDS[path] ?? null;
