import { useSyncExternalStore } from "react";
import { NOBODY } from "#casework";

const KEY = "underbench.recorder";
/** Who recorded something, in a sentence: nobody who has given a name is "somebody". */
export const recorderWords = (by: string): string => (by === NOBODY ? "somebody" : by);

const listeners = new Set<() => void>();
let chosen: string | null = null;

const load = (): string => {
  try {
    return localStorage.getItem(KEY) ?? NOBODY;
  } catch (cause) {
    if (cause instanceof DOMException) return NOBODY;
    throw cause;
  }
};

/** Who records on this device: initials or a name, "not named" until somebody says so. */
export const currentRecorder = (): string => {
  chosen ??= load();
  return chosen;
};

/** Query that names who makes a printed sheet: "?by=MK"; "" where nobody is named. */
export const byQuery = (): string => {
  const who = currentRecorder();
  return who === NOBODY ? "" : `?by=${encodeURIComponent(who)}`;
};

/** Names who records on this device from now on; an empty name is nobody's. */
export const nameRecorder = (name: string): void => {
  chosen = name.trim() === "" ? NOBODY : name.trim().slice(0, 200);
  try {
    localStorage.setItem(KEY, chosen);
  } catch (cause) {
    // A browser that keeps nothing knows the name as long as the page is open.
    if (!(cause instanceof DOMException)) throw cause;
  }
  for (const listener of listeners) listener();
};

const subscribe = (changed: () => void) => {
  listeners.add(changed);
  return () => listeners.delete(changed);
};

/** Who records on this device, as it changes. */
export const useRecorder = (): string => useSyncExternalStore(subscribe, currentRecorder);
