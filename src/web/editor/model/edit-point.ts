import { withEntered } from "./entered-figure.ts";
import { coordinatesPath, sharedPoints, withOwnSaid } from "./hard-points.ts";
import type { SheetPath } from "./sheet-path.ts";
import { isSameValue, sheetValueAt, withSheetValue } from "./sheet-value.ts";

/**
 * A point with those that are the same joint: the outer end that the legs of a rigid arm have in common, as long as they
 * stand together.
 */
const pointsTogether = (sheet: unknown, point: SheetPath): readonly SheetPath[] => {
  const own = sheetValueAt(sheet, coordinatesPath(sheet, point));
  return sharedPoints(sheet, point).filter((one) => isSameValue(sheetValueAt(sheet, coordinatesPath(sheet, one)), own));
};

/** Writes one coordinate of a point; what is the same joint moves with it. */
export const withCoordinate = (sheet: unknown, point: SheetPath, axis: number, value: unknown): unknown => {
  const moved = pointsTogether(sheet, point).reduce<unknown>(
    (changed, one) => withSheetValue(changed, [...coordinatesPath(sheet, one), axis], value ?? null),
    sheet,
  );
  return withEntered(moved, point);
};

/** Writes where a point comes from and how well it is known; what is the same joint is known as well. */
export const withSaid = (
  sheet: unknown,
  point: SheetPath,
  said: { readonly sd_mm?: unknown; readonly origin?: unknown },
): unknown =>
  pointsTogether(sheet, point).reduce<unknown>(
    (changed, one) => withSheetValue(changed, one, withOwnSaid(sheetValueAt(sheet, one), said)),
    sheet,
  );
