import type { KeyboardEvent } from "react";

/** x, y and z of a point stand side by side. */
const COLUMNS = 3;

/** How many coordinates on a key leads: Enter to the next one, Control and an arrow to the point above or below; 0 for others. */
const stepOf = ({ key, shiftKey, ctrlKey }: KeyboardEvent): number => {
  if (key === "Enter") return shiftKey ? -1 : 1;
  if (!ctrlKey) return 0;
  return key === "ArrowDown" ? COLUMNS : key === "ArrowUp" ? -COLUMNS : 0;
};

/** Moves the focus through the coordinates of a table of points, past everything else in it; at an end it stays. */
export const walkPoints = (event: KeyboardEvent<HTMLElement>): void => {
  const step = stepOf(event);
  if (step === 0 || !(event.target instanceof HTMLInputElement)) return;
  const fields = [...event.currentTarget.querySelectorAll<HTMLInputElement>(".point-row input")];
  const next = fields[fields.indexOf(event.target) + step];
  event.preventDefault();
  next?.focus();
};

/** The keys of the points, for the list of keys. */
export const POINT_KEYS = [
  { key: "Enter, Shift Enter", does: "in a coordinate: the next one, the one before" },
  { key: "Ctrl ↑, Ctrl ↓", does: "in a coordinate: the same of the point above or below" },
  { key: "↑ ↓", does: "in a coordinate: 1 mm more or less, with Shift 10" },
];
