import type { SheetPath } from "./sheet-path.ts";

type Keyed = Readonly<Record<string, unknown>>;

export const isKeyed = (value: unknown): value is Keyed =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The value at a path of a sheet; undefined where nothing stands there. */
export const sheetValueAt = (sheet: unknown, path: SheetPath): unknown => {
  let value = sheet;
  for (const step of path) {
    if (typeof step === "number") value = Array.isArray(value) ? value[step] : undefined;
    else value = isKeyed(value) && Object.hasOwn(value, step) ? value[step] : undefined;
  }
  return value;
};

/**
 * The sheet with another value at a path; everything beside the path stays the same object.
 * @param value undefined takes the key away; inside a list it leaves null, so that what follows keeps its place
 */
export const withSheetValue = (sheet: unknown, path: SheetPath, value: unknown): unknown => {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === "number") {
    const list: readonly unknown[] = Array.isArray(sheet) ? sheet : [];
    const length = Math.max(list.length, step + 1);
    return Array.from({ length }, (_, index) =>
      index === step ? (withSheetValue(list[index], rest, value) ?? null) : (list[index] ?? null),
    );
  }
  const keyed = isKeyed(sheet) ? sheet : {};
  const inner = withSheetValue(Object.hasOwn(keyed, step) ? keyed[step] : undefined, rest, value);
  if (inner !== undefined) return { ...keyed, [step]: inner };
  const { [step]: _, ...others } = keyed;
  return others;
};

/** The sheet without one entry of a list. */
export const withoutEntry = (sheet: unknown, list: SheetPath, index: number): unknown => {
  const entries = sheetValueAt(sheet, list);
  return Array.isArray(entries) ? withSheetValue(sheet, list, entries.toSpliced(index, 1)) : sheet;
};

/** The sheet with one more entry at the end of a list, which is begun where there is none. */
export const withEntry = (sheet: unknown, list: SheetPath, entry: unknown): unknown => {
  const entries = sheetValueAt(sheet, list);
  return withSheetValue(sheet, list, [...(Array.isArray(entries) ? entries : []), entry]);
};

/** True where two values of plain data say the same; the order of keys does not count. */
export const isSameValue = (one: unknown, other: unknown): boolean => {
  if (Object.is(one, other)) return true;
  if (Array.isArray(one) && Array.isArray(other))
    return one.length === other.length && one.every((value, index) => isSameValue(value, other[index]));
  if (!isKeyed(one) || !isKeyed(other)) return false;
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => Object.hasOwn(other, key) && isSameValue(one[key], other[key]))
  );
};
