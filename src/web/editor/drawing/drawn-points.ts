import type { DrawnPoint } from "#drawing";
import type { AxleName } from "../../car.ts";
import { coordinatesPath, pointRows } from "../model/hard-points.ts";
import { formatSheetPath, type SheetPath } from "../model/sheet-path.ts";
import { isSameValue, sheetValueAt } from "../model/sheet-value.ts";

const MM = 1000;

type Place = readonly [number, number, number];

/** Metres of a point of a sheet; null where it is none. */
const placeOf = (sheet: unknown, path: SheetPath): Place | null => {
  const value = sheetValueAt(sheet, coordinatesPath(sheet, path));
  if (!Array.isArray(value)) return null;
  const [x, y, z] = value;
  return typeof x === "number" && typeof y === "number" && typeof z === "number" ? [x / MM, y / MM, z / MM] : null;
};

/** The same link by its name, since links may be added and taken away before it. */
const isSamePart = (one: unknown, other: unknown, path: SheetPath): boolean =>
  path[1] !== "links" ||
  isSameValue(sheetValueAt(one, [...path.slice(0, 3), "name"]), sheetValueAt(other, [...path.slice(0, 3), "name"]));

/** Points of an axle as they are drawn: where they lie, and where those that were moved lay before. */
export const drawnPoints = (
  sheet: unknown,
  kept: unknown,
  axle: AxleName,
  selected: string | null,
): readonly DrawnPoint[] =>
  pointRows(sheet, axle).flatMap(({ path }): DrawnPoint[] => {
    const at = placeOf(sheet, path);
    if (at === null) return [];
    const before = isSamePart(sheet, kept, path) ? placeOf(kept, path) : null;
    const id = formatSheetPath(path);
    return [{ id, at, before: before === null || isSameValue(before, at) ? null : before, selected: id === selected }];
  });
