import type { Position } from "#vehicle";
import { gradeOfState, hasFinding, linesOf, type PositionStates } from "../below/position-state.ts";
import { polyline } from "../path.ts";
import type { Mark, Target, TextStyle, TypeScale } from "../scene.ts";
import { computeStyleWidth, wrapText } from "../text-width.ts";
import { faces, strokes } from "../tokens.ts";
import { fullName, stateWords } from "../underside/position-labels.ts";

/** One name row: mark, name, and what was found; pressed as a whole. */
export interface Row {
  readonly position: Position;
  /** The position's own label, with its side where rows of both sides stand together. */
  readonly label: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly selected: boolean;
}

const MARK = { plain: 15, finding: 19 } as const;
const TEXT_INDENT = 34;

/** Name on the first line, the rest of the label or what was found on the second, if it needs one. */
export function rowLines(
  label: string,
  found: readonly string[],
  width: number,
  type: TypeScale,
): readonly [name: string, second: string | null] {
  const [head = label, ...rest] = label.split(", ");
  const fits = (text: string, style: TextStyle) => computeStyleWidth(text, style, type) <= width;
  if (found.length === 0) {
    if (fits(label, "label")) return [label, null];
    const second = rest.join(", ");
    return rest.length > 0 && fits(second, "note") && fits(head, "label")
      ? [head, second]
      : splitName(label, width, type);
  }
  const joined = found.join(", ");
  const short = found.find((text) => fits(text, "note"));
  if (fits(label, "label-bold") && short !== undefined) return [label, fits(joined, "note") ? joined : short];
  const second = [[...rest, ...found].join(", "), [...rest, found[0]].join(", "), joined, found[0]].find(
    (text) => text !== undefined && fits(text, "note"),
  );
  return [head, second ?? `${wrapText(joined, width, "note", type)[0] ?? ""} …`];
}

function splitName(label: string, width: number, type: TypeScale): readonly [string, string | null] {
  const [first = label, ...more] = wrapText(label, width, "label", type);
  return [first, more.length === 0 ? null : more.join(" ")];
}

/** Draws a row: mark, one or two lines of text, and the line under it. */
export function drawRow(row: Row, states: PositionStates, type: TypeScale): readonly Mark[] {
  const { x, y, width, height, position, selected } = row;
  const state = states[position.id];
  const found = hasFinding(state);
  const [name, second] = rowLines(row.label, linesOf(state), width - TEXT_INDENT, type);
  const style: TextStyle = selected ? "label-accent" : found ? "label-bold" : "label-second";
  const middle = y + height / 2;
  const size = faces[type].label.size;
  const base = second === null ? middle + size * 0.34 : middle - 3;
  const rule = polyline([
    [x, y + height],
    [x + width, y + height],
  ]);
  const marks: Mark[] = [
    {
      kind: "path",
      d: rule,
      stroke: selected ? { colour: "accent", width: strokes.selected } : { colour: "hair", width: 1 },
    },
    {
      ...gradeOfState(state),
      cx: x + 15,
      cy: middle,
      size: found ? MARK.finding : MARK.plain,
    },
    { kind: "text", x: x + TEXT_INDENT, y: base, text: name, style },
  ];
  if (second !== null) {
    marks.push({
      kind: "text",
      x: x + TEXT_INDENT,
      y: base + size * 1.12,
      text: second,
      style: "note",
      colour: "ink2",
    });
  }
  return marks;
}

/** The target of a row: all of it. */
export function rowTarget(row: Row, states: PositionStates): Target {
  const { position, x, y, width, height, selected } = row;
  const name = `${fullName(position)}: ${stateWords(position, states)}`;
  return { id: position.id, name, x, y, width, height, ...(selected ? { selected: true } : {}) };
}
