import { withEntered } from "./entered-figure.ts";
import { coordinatesPath, sharedPoints } from "./hard-points.ts";
import type { SheetPath } from "./sheet-path.ts";
import { isSameValue, sheetValueAt, withSheetValue } from "./sheet-value.ts";

/**
 * Writes one coordinate of a point. The outer end that the legs of a rigid arm have in common is one joint: where they
 * stood together before, they move together.
 */
export const withCoordinate = (sheet: unknown, point: SheetPath, axis: number, value: unknown): unknown => {
  const own = sheetValueAt(sheet, coordinatesPath(sheet, point));
  const together = sharedPoints(sheet, point).filter((one) =>
    isSameValue(sheetValueAt(sheet, coordinatesPath(sheet, one)), own),
  );
  const moved = together.reduce<unknown>(
    (changed, one) => withSheetValue(changed, [...coordinatesPath(sheet, one), axis], value ?? null),
    sheet,
  );
  return withEntered(moved, point);
};
