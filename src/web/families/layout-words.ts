import type { LayoutName } from "../car.ts";

/** Layouts in words, as a workshop says them. */
export const LAYOUT_WORDS: Readonly<Record<LayoutName, string>> = {
  "five-link": "five-link",
  "double-wishbone": "double wishbone",
  strut: "strut",
  "trailing-arm": "trailing arm",
  bodies: "several bodies",
};
