import { useSyncExternalStore } from "react";
import type { TypeScale } from "#drawing";

/** The same condition as in tokens.css. */
const TOUCH = "(pointer: coarse), (orientation: portrait) and (max-width: 1000px)";

const subscribe = (changed: () => void) => {
  const query = matchMedia(TOUCH);
  query.addEventListener("change", changed);
  return () => query.removeEventListener("change", changed);
};

const current = (): TypeScale => (matchMedia(TOUCH).matches ? "touch" : "desk");

/** Whether scenes are set for a desk or for a touch screen under a car. */
export const useTypeScale = (): TypeScale => useSyncExternalStore(subscribe, current);
