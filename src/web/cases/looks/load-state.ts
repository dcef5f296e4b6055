import { useSyncExternalStore } from "react";
import type { LoadState } from "#casework";

/** Words of the states a car under the eye can be in. */
export const LOAD_STATES: readonly { readonly value: LoadState; readonly words: string }[] = [
  { value: "standing", words: "standing" },
  { value: "hanging", words: "hanging" },
  { value: "supported", words: "supported" },
  { value: "bench", words: "bench" },
];

let state: LoadState = "hanging";
const listeners = new Set<() => void>();

const subscribe = (changed: () => void) => {
  listeners.add(changed);
  return () => listeners.delete(changed);
};

const set = (next: LoadState): void => {
  state = next;
  for (const listener of listeners) listener();
};

/** The state of load looks are made in, on all sheets of the underside until it is changed; a car on a lift hangs. */
export const useLoadState = (): readonly [LoadState, (next: LoadState) => void] => [
  useSyncExternalStore(subscribe, () => state),
  set,
];
