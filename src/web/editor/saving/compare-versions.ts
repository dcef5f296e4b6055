import type { SheetPath } from "../model/sheet-path.ts";
import { isKeyed, isSameValue, sheetValueAt, withSheetValue } from "../model/sheet-value.ts";

export type Side = "mine" | "theirs";

/** One place two people's versions of a sheet say different things about. */
export interface Difference {
  readonly path: SheetPath;
  readonly mine: unknown;
  readonly theirs: unknown;
  /** What stands where nobody chooses: the side that changed it; mine where both did. */
  readonly first: Side;
}

const isBareList = (value: unknown): boolean =>
  Array.isArray(value) && value.every((entry) => typeof entry !== "object");

/** Every place where two versions differ, as far in as their forms agree; coordinates and lists of unequal length stay whole. */
export const compareVersions = (base: unknown, mine: unknown, theirs: unknown): readonly Difference[] => {
  const compare = (path: SheetPath, one: unknown, other: unknown): readonly Difference[] => {
    if (isSameValue(one, other)) return [];
    if (isKeyed(one) && isKeyed(other)) {
      const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])];
      return keys.flatMap((key) => compare([...path, key], one[key], other[key]));
    }
    if (Array.isArray(one) && Array.isArray(other) && one.length === other.length && !isBareList(one))
      return one.flatMap((entry, index) => compare([...path, index], entry, other[index]));
    const first: Side = isSameValue(sheetValueAt(base, path), one) ? "theirs" : "mine";
    return [{ path, mine: one, theirs: other, first }];
  };
  return compare([], mine, theirs);
};

/** One version out of two: mine, with theirs wherever that is chosen. */
export const settleVersions = (
  mine: unknown,
  differences: readonly Difference[],
  sideOf: (difference: Difference) => Side,
): unknown =>
  differences
    .filter((difference) => sideOf(difference) === "theirs")
    .reduce<unknown>((sheet, { path, theirs }) => withSheetValue(sheet, path, theirs), mine);
