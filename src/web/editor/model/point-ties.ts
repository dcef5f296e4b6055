import type { SheetPath } from "./sheet-path.ts";
import { isKeyed, isSameValue, sheetValueAt, withSheetValue } from "./sheet-value.ts";

/** How the errors of an axle's points hang together, as it stands in a sheet that may be wrong anywhere. */
interface Ties {
  readonly points: readonly string[];
  readonly lower: readonly (readonly number[])[];
}

const tiesOf = (sheet: unknown, axle: string): Ties | null => {
  const value = sheetValueAt(sheet, [axle, "correlation"]);
  if (!isKeyed(value) || !Array.isArray(value.points) || !Array.isArray(value.lower)) return null;
  const { points, lower } = value;
  return points.every((point) => typeof point === "string") && lower.every(Array.isArray) ? { points, lower } : null;
};

/** Where a point of that name stands; null where there is none. */
const pathOf = (sheet: unknown, axle: string, name: string): SheetPath | null => {
  if (name === "strut.top") return [axle, "strut", "top_mm"];
  if (name === "strut.axis-point") return [axle, "strut", "axis_point_mm"];
  if (name === "trailing-arm.bush") return [axle, "trailing_arm", "bush_mm"];
  const dot = name.lastIndexOf(".");
  const links = sheetValueAt(sheet, [axle, "links"]);
  const index = Array.isArray(links)
    ? links.findIndex((link) => isKeyed(link) && link.name === name.slice(0, dot))
    : -1;
  return index < 0 ? null : [axle, "links", index, `${name.slice(dot + 1)}_mm`];
};

/** A point and what it takes from its axle where it says nothing itself. */
const saidOf = (sheet: unknown, axle: string, name: string): readonly unknown[] => {
  const path = pathOf(sheet, axle, name);
  const usual = ["origin", "sd_mm"].map((key) => sheetValueAt(sheet, [axle, "defaults", key]));
  return [path === null ? null : sheetValueAt(sheet, path), ...usual];
};

/** Of ties, those among the named points. */
const tiesAmong = ({ points, lower }: Ties, kept: readonly string[]): Ties => {
  const rows = kept.flatMap((name) => [0, 1, 2].map((axis) => 3 * points.indexOf(name) + axis));
  const at = (i: number, j: number): number => lower[Math.max(i, j) - 1]?.[Math.min(i, j)] ?? 0;
  return { points: kept, lower: rows.slice(1).map((row, i) => rows.slice(0, i + 1).map((other) => at(row, other))) };
};

/**
 * A changed sheet in which only those points still hang together that say what they said when the ties were found; ties that
 * were written themselves stay as they were written.
 * @param base the sheet the ties were found with
 */
export const withTiesThatHold = (base: unknown, before: unknown, sheet: unknown): unknown =>
  ["front", "rear"].reduce<unknown>((kept, axle) => {
    const path = [axle, "correlation"];
    const found = tiesOf(base, axle);
    const written = sheetValueAt(sheet, path);
    if (found === null || written === undefined || !isSameValue(written, sheetValueAt(before, path))) return kept;
    const points = found.points.filter((name) => isSameValue(saidOf(base, axle, name), saidOf(sheet, axle, name)));
    return withSheetValue(kept, path, points.length === 0 ? undefined : tiesAmong(found, points));
  }, sheet);
