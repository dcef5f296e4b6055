import { type Family, findReadingPlace, gradeWords, type Position, positionsOf } from "#vehicle";
import { hasFinding, linesOf, type PositionStates } from "../below/position-state.ts";
import { type LabelColumn, type LabelPlacement, type PlacedLabel, placeInColumn } from "../labels/place-labels.ts";
import type { Spot } from "../path.ts";
import type { Mark, Target, TypeScale } from "../scene.ts";
import { drawLeader } from "../symbols/leader.ts";
import { wrapText, wrapToLines } from "../text-width.ts";
import { faces, LEAST_TARGET, NOT_KNOWN, NOT_LOOKED_AT } from "../tokens.ts";

/** A label that hangs on a leader: the place in bold, then what was found there. */
export interface PositionLabel {
  readonly position: Position;
  readonly point: Spot;
  readonly name: readonly string[];
  readonly lines: readonly string[];
  /** One line for where there is no room for more. */
  readonly short: string;
  readonly selected: boolean;
}

const MOST_LINES = 5;
/** From the text to the knee of the leader. */
const TO_PORT = 8;
const PORT_TO_KNEE = 14;

const lineHeight = (type: TypeScale): number => Math.round(faces[type].label.size * 1.18);

/** What a full name is made of. */
type Named = Pick<Position, "axle" | "side" | "label">;

const cornerWords = ({ axle, side }: Named): string => (side === null ? `${axle} axle` : `${axle} ${side}`);

/** A position by its full name: "Rear left, trailing link, front bush". */
export function fullName(position: Named): string {
  const where = cornerWords(position);
  const label = position.label.charAt(0).toLowerCase() + position.label.slice(1);
  return `${where.charAt(0).toUpperCase()}${where.slice(1)}, ${label}`;
}

/** The position with this id; null where the family has none. */
export function positionWithId(family: Family, id: string): Position | null {
  return positionsOf(family).find((candidate) => candidate.id === id) ?? null;
}

/** The full name of the place with this id, one that is only read too; the id itself where the family has none. */
export function positionName(family: Family, id: string): string {
  const place = positionWithId(family, id) ?? findReadingPlace(id);
  return place === null ? id : fullName(place);
}

/** What is known of a position in words: "repair first, torn, 4.6 mm", or "not looked at". */
export function stateWords(position: Position, states: PositionStates): string {
  const state = states[position.id];
  if (state === undefined) return NOT_LOOKED_AT.toLowerCase();
  return [(state.grade === null ? NOT_KNOWN : gradeWords[state.grade]).toLowerCase(), ...linesOf(state)].join(", ");
}

/** The positions that get a label: the selected one first, then those with a finding, worst first. */
export function labelledPositions(
  positions: readonly Position[],
  states: PositionStates,
  selected: string | null,
): readonly Position[] {
  const weight = (position: Position): number =>
    position.id === selected ? 10 : (states[position.id]?.grade ?? 0) + (states[position.id]?.close === true ? 0.5 : 0);
  return positions
    .filter((position) => position.at !== null)
    .filter((position) => position.id === selected || hasFinding(states[position.id]))
    .toSorted((a, b) => weight(b) - weight(a));
}

/** Binds a figure to its unit, so that a line never ends between them. */
const keepUnits = (text: string): string => text.replaceAll(/(\d) (mm|kN|N|km|°|%)/g, "$1\u00a0$2");

/** The words of one label, wrapped into the column. */
export function labelOf(
  position: Position,
  point: Spot,
  states: PositionStates,
  selected: boolean,
  width: number,
  type: TypeScale,
): PositionLabel {
  const [head = position.label, ...rest] = position.label.split(", ");
  const state = states[position.id];
  const said = state === undefined ? [NOT_LOOKED_AT.toLowerCase()] : linesOf(state);
  // "Brake disc, thickness" with "thickness 27.01 mm" says thickness once.
  const own = rest.filter((part) => !said[0]?.toLowerCase().includes(part.toLowerCase()));
  const first = [...own, said[0]].filter((part) => part !== undefined).join(", ");
  const lines: string[] = [];
  for (const line of [first, ...said.slice(1)]) {
    const room = MOST_LINES - lines.length;
    if (room > 0) lines.push(...wrapToLines(keepUnits(line), width, room, "label-second", type));
  }
  const name = wrapText(head, width, selected ? "label-accent" : "label-bold", type).slice(0, 2);
  const fits = (text: string) => wrapText(keepUnits(text), width, "label-second", type).length <= 1;
  const short = [first, ...said].find(fits) ?? `${lines[0] ?? ""} …`;
  return { position, point, name, lines, short, selected };
}

/** Height of a label; never less than a thumb needs. */
export function labelHeight(label: PositionLabel, type: TypeScale): number {
  return Math.max(LEAST_TARGET, (label.name.length + label.lines.length) * lineHeight(type) + 10);
}

/** Draws labels in the two columns beside a drawing, with leaders that do not cross, and the target of each. */
export function drawPositionLabels(
  labels: readonly PositionLabel[],
  area: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
    readonly width: number;
  },
  states: PositionStates,
  type: TypeScale,
): { readonly marks: readonly Mark[]; readonly targets: readonly Target[] } {
  const { size } = faces[type].label;
  const portOffset = 5 + size * 0.62;
  const column = (side: "left" | "right"): LabelColumn => ({
    side,
    kneeX: side === "left" ? area.left : area.right,
    top: area.top,
    bottom: area.bottom,
    portOffset,
  });
  const shown = fitLabels(labels, area, [column("left"), column("right")], type);
  const marks: Mark[] = [];
  const targets: Target[] = [];
  for (const place of shown.placed) {
    const label = shown.labels.find(({ position }) => position.id === place.id);
    if (label === undefined) continue;
    const sign = place.side === "left" ? -1 : 1;
    const port: Spot = [place.knee[0] + sign * PORT_TO_KNEE, place.knee[1]];
    const textX = port[0] + sign * TO_PORT;
    const anchor = place.side === "left" ? "end" : "start";
    const clear = label.selected ? 20 : 10;
    marks.push(drawLeader({ port, knee: place.knee, point: label.point, clear, selected: label.selected }));
    const texts = [
      ...label.name.map((text) => ({ text, style: label.selected ? "label-accent" : "label-bold" }) as const),
      ...label.lines.map((text) => ({ text, style: "label-second" }) as const),
    ];
    for (const [i, { text, style }] of texts.entries()) {
      marks.push({
        kind: "text",
        x: textX,
        y: place.top + 5 + size * 0.95 + i * lineHeight(type),
        text,
        style,
        anchor,
      });
    }
    targets.push({
      id: place.id,
      name: `${fullName(label.position)}: ${stateWords(label.position, states)}`,
      x: place.side === "left" ? 2 : textX - 4,
      y: place.top,
      width: place.side === "left" ? textX + 2 : area.width - textX + 2,
      height: labelHeight(label, type),
      ...(label.selected ? { selected: true } : {}),
    });
  }
  return { marks, targets };
}

/**
 * Left half of the car to the left column, right half to the right. Where room is short, the least important labels say
 * less, one after the other; only when all are short are the last ones left out.
 */
function fitLabels(
  labels: readonly PositionLabel[],
  area: { readonly width: number },
  columns: readonly [left: LabelColumn, right: LabelColumn],
  type: TypeScale,
): { readonly labels: readonly PositionLabel[]; readonly placed: readonly PlacedLabel[] } {
  const results = columns.map((column) => {
    let own = labels.filter(({ point }) => (column.side === "left") === point[0] < area.width / 2);
    const place = (): LabelPlacement =>
      placeInColumn(
        own.map((label) => ({ id: label.position.id, point: label.point, height: labelHeight(label, type) })),
        column,
      );
    let placement = place();
    for (let i = own.length - 1; i >= 0 && placement.left.length > 0; i--) {
      own = own.map((label, k) => (k === i ? { ...label, lines: [label.short] } : label));
      placement = place();
    }
    return { own, placed: placement.placed };
  });
  return { labels: results.flatMap(({ own }) => own), placed: results.flatMap(({ placed }) => placed) };
}
