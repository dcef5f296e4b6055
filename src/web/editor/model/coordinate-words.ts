import type { AxleName } from "../../car.ts";
import { pathOfCoordinate, pointRows } from "./hard-points.ts";
import { pathWords } from "./path-words.ts";
import { formatSheetPath, isAtOrIn, type SheetPath } from "./sheet-path.ts";

const COORDINATES = ["x", "y", "z"] as const;
const AXLE_WORDS = { front: "Front axle", rear: "Rear axle" } as const;

const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

const rowAt = (sheet: unknown, axle: AxleName, place: string) =>
  pointRows(sheet, axle).find(({ path }) => isAtOrIn(place, formatSheetPath(path)));

/** A point as computations name it ("toe-link.inner"), as the fields name it: "toe link, inner end". */
export const pointWords = (sheet: unknown, axle: AxleName, point: string): string => {
  const path = pathOfCoordinate(sheet, axle, point, 0);
  const row = path === null ? undefined : rowAt(sheet, axle, formatSheetPath(path));
  return row === undefined ? point.replaceAll("-", " ").replaceAll(".", ", ") : lowerFirst(row.name);
};

/** A place of the sheet in words: a coordinate as its field names it, anything else by its keys. */
export const placeWords = (sheet: unknown, path: SheetPath): string => {
  const [axle] = path;
  if (axle !== "front" && axle !== "rear") return pathWords(sheet, path);
  const row = rowAt(sheet, axle, formatSheetPath(path));
  if (row === undefined) return pathWords(sheet, path);
  const last = path.at(-1);
  const coordinate = typeof last === "number" && path.length > row.path.length ? `, ${COORDINATES[last] ?? last}` : "";
  return `${AXLE_WORDS[axle]}: ${lowerFirst(row.name)}${coordinate}`;
};
