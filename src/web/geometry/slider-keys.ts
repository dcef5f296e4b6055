import type { FieldKey } from "../shell/key-list.tsx";

/** Keys that hold on a slider, for the list of keys. */
export const SLIDER_KEYS: readonly FieldKey[] = [
  { key: "← →", does: "on a slider: one step down or up" },
  { key: "Page Up, Page Down", does: "on a slider: a tenth of its length" },
  { key: "Home, End", does: "on a slider: to its lower or upper end" },
];
