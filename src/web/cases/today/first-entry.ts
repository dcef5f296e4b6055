/** What one entry on Today says: a car by its plate or name, or what its owner says. */
export type FirstEntry =
  | { readonly kind: "registration"; readonly text: string }
  | { readonly kind: "name"; readonly text: string }
  | { readonly kind: "words"; readonly text: string };

/** A plate is short and has a digit in it. */
const LONGEST_PLATE = 12;
/** More words than this are somebody speaking. */
const MOST_WORDS_OF_NAME = 3;

/** Tells a plate, a name and an owner's words apart. */
export const readFirstEntry = (typed: string): FirstEntry => {
  const text = typed.trim();
  const words = text.split(/\s+/);
  if (
    text.length <= LONGEST_PLATE &&
    words.length <= MOST_WORDS_OF_NAME &&
    /\d/.test(text) &&
    text === text.toUpperCase()
  )
    return { kind: "registration", text };
  return { kind: words.length <= MOST_WORDS_OF_NAME ? "name" : "words", text };
};
