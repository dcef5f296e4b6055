import { useState } from "react";

const KEY = "underbench.refused.";

const tried = <T>(run: () => T, otherwise: T): T => {
  try {
    return run();
  } catch (cause) {
    // A browser that keeps nothing forgets the text when the page goes.
    if (cause instanceof DOMException) return otherwise;
    throw cause;
  }
};

const load = (key: string): string | null => tried(() => localStorage.getItem(KEY + key), null);

const store = (key: string, text: string | null): void =>
  tried(() => (text === null ? localStorage.removeItem(KEY + key) : localStorage.setItem(KEY + key, text)), undefined);

/**
 * What was typed into a field and could not be taken, so that it stands there again after Back or a reload.
 * @param key tells the field from every other: visit, then field
 * @returns the text (null: none), and what keeps another or forgets it
 */
export const useRefusedText = (key: string): readonly [string | null, (text: string | null) => void] => {
  const [held, setHeld] = useState(() => ({ key, text: load(key) }));
  const now = held.key === key ? held : { key, text: load(key) };
  if (now !== held) setHeld(now);
  return [
    now.text,
    (text) => {
      store(key, text);
      setHeld({ key, text });
    },
  ];
};
