import { fieldWords } from "./field-words.ts";
import { linkLabel } from "./hard-points.ts";
import type { SheetPath } from "./sheet-path.ts";
import { isKeyed, sheetValueAt } from "./sheet-value.ts";

const COORDINATES = ["x", "y", "z"] as const;

/** What an entry of a list is called: its words, its name, or its place in the list. */
export const entryLabel = (entry: unknown, index: number): string => {
  const { label, name, id, item, position, place, quantity, axle, part } = isKeyed(entry) ? entry : {};
  if (typeof place === "string" && typeof quantity === "string")
    return place.endsWith(quantity) ? place : `${place} ${quantity}`;
  const said = [label, name, id, item, position, part, axle].find((one) => typeof one === "string" && one !== "");
  return typeof said === "string" ? said : `entry ${index + 1}`;
};

/** A place of the sheet in words: "Rear, Trailing link, Inner, x". */
export const pathWords = (sheet: unknown, path: SheetPath): string => {
  if (path.length === 0) return "The whole sheet";
  const words: string[] = [];
  path.forEach((step, index) => {
    if (typeof step === "string") {
      const isList =
        typeof path[index + 1] === "number" && Array.isArray(sheetValueAt(sheet, path.slice(0, index + 1)));
      const entry = isList ? sheetValueAt(sheet, path.slice(0, index + 2)) : undefined;
      if (step !== "work" && !(isList && isKeyed(entry) && step === "links")) words.push(fieldWords(step).label);
      return;
    }
    const entry = sheetValueAt(sheet, path.slice(0, index + 1));
    if (path[index - 1] === "links") words.push(linkLabel(entry, step));
    else if (isKeyed(entry)) words.push(entryLabel(entry, step));
    else words.push(COORDINATES[step] ?? String(step + 1));
  });
  return words.join(", ");
};
