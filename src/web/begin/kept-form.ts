import type { SilhouetteForm } from "./silhouette-form.ts";

const KEY = "underbench.begin.";

const orNothing = <T>(act: () => T): T | null => {
  try {
    return act();
  } catch (cause) {
    // A browser that keeps nothing forgets entries when the page goes; what was kept in another shape is none.
    if (cause instanceof DOMException || cause instanceof SyntaxError) return null;
    throw cause;
  }
};

const isText = (value: unknown): value is string => typeof value === "string";

/** Whether what was kept has every entry a form has now. */
const isForm = (value: unknown, like: SilhouetteForm): value is SilhouetteForm => {
  if (typeof value !== "object" || value === null) return false;
  const kept = value as Readonly<Record<string, unknown>>;
  const texts = Object.keys(like).filter((key) => key !== "numbers");
  const numbers = kept.numbers as Readonly<Record<string, unknown>> | null | undefined;
  return (
    texts.every((key) => isText(kept[key])) &&
    typeof numbers === "object" &&
    numbers !== null &&
    Object.keys(like.numbers).every((key) => isText(numbers[key]))
  );
};

/**
 * Entries that were typed here and not used yet; null where none were.
 * @param subject what the entries are for: a visit, a car line that is corrected
 * @param like a form as it is made now
 */
export const loadKeptForm = (subject: string, like: SilhouetteForm): SilhouetteForm | null =>
  orNothing(() => {
    const value: unknown = JSON.parse(sessionStorage.getItem(KEY + subject) ?? "null");
    return isForm(value, like) ? value : null;
  });

/** Keeps entries for as long as this window is open, through Back and reload. */
export const keepForm = (subject: string, form: SilhouetteForm): void => {
  orNothing(() => sessionStorage.setItem(KEY + subject, JSON.stringify(form)));
};

/** Forgets entries that were used or are no longer wanted. */
export const forgetForm = (subject: string): void => {
  orNothing(() => sessionStorage.removeItem(KEY + subject));
};
