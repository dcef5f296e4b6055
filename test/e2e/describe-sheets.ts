import { describe, it } from "vitest";
import { tabThrough } from "./focus.ts";
import { lookAtSheet, type Sheet } from "./look-at-sheet.ts";

/** Looks at each of some sheets in every size and both themes, and goes through it by Tab. */
export const describeSheets = (of: string, sheets: readonly Sheet[]): void => {
  describe(`sheets ${of}`, () => {
    it.each(sheets)(
      "$name: its pictures in every size and both themes, nothing for axe to find, no complaint, every stop of Tab seen",
      (sheet) => lookAtSheet(sheet, tabThrough),
    );
  });
};
