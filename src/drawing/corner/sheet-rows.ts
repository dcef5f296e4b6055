import type { Position } from "#vehicle";
import { countSeen, gradeOfState, hasFinding, type PositionStates } from "../below/position-state.ts";
import type { Spot } from "../path.ts";
import type { Projection } from "../projection.ts";
import type { GradeMark, Mark, PressPoint, Target, TypeScale } from "../scene.ts";
import { drawLeader } from "../symbols/leader.ts";
import { computeStyleWidth } from "../text-width.ts";
import { strokes } from "../tokens.ts";
import { drawingArea, placeRows } from "./place-rows.ts";
import { drawRow, type Row, rowTarget } from "./row.ts";
import type { SheetPlace, SheetPlan } from "./sheet-layout.ts";

export interface SheetRowOptions {
  readonly place: SheetPlace;
  readonly plan: SheetPlan;
  readonly states: PositionStates;
  readonly selected: string | null;
  readonly type: TypeScale;
  /** Say the side in each row: rows of both sides stand together. */
  readonly saySide?: boolean;
}

const SIZES = { plain: 12, finding: 16, selected: 18 } as const;

/** Rows with the target of each, and the drawn places that stand for them. */
export interface SheetRows {
  readonly marks: readonly Mark[];
  readonly targets: readonly Target[];
  readonly points: readonly PressPoint[];
}

/** Rows of a sheet with their leaders, and the mark at each point; what lies nowhere has a row without a leader, at the foot. */
export function drawSheetRows(
  list: readonly Position[],
  view: Projection,
  { place, plan, states, selected, type, saySide = false }: SheetRowOptions,
): SheetRows {
  const area = drawingArea(place, plan);
  const nowhere: Spot = [(area.left + area.right) / 2, place.y + place.height];
  const spots = new Map(list.map(({ id, at }) => [id, at === null ? nowhere : view.spot(at)]));
  const requests = list.map(({ id }) => ({ id, point: spots.get(id) ?? nowhere }));
  const marks: Mark[] = [];
  const targets: Target[] = [];
  for (const { id, x, y, height, port, knee } of placeRows(requests, place, plan)) {
    const position = list.find((candidate) => candidate.id === id);
    const spot = spots.get(id);
    if (position === undefined || spot === undefined) continue;
    const isSelected = id === selected;
    const label = saySide && position.side !== null ? `${position.label}, ${position.side}` : position.label;
    const row: Row = { position, label, x, y, width: plan.rowWidth, height, selected: isSelected };
    marks.push(...drawRow(row, states, type));
    targets.push(rowTarget(row, states));
    if (position.at === null || plan.scale === 0) continue;
    marks.push(drawLeader({ port, knee, point: spot, clear: isSelected ? 20 : 8, selected: isSelected }));
  }
  if (plan.scale > 0)
    marks.push(...list.flatMap((position) => pointMark(position, spots.get(position.id), states, selected)));
  const points = list.flatMap(({ id, at }): PressPoint[] => {
    const spot = spots.get(id);
    return plan.scale === 0 || at === null || spot === undefined ? [] : [{ id, x: spot[0], y: spot[1] }];
  });
  return { marks, targets, points };
}

function pointMark(
  position: Position,
  spot: Spot | undefined,
  states: PositionStates,
  selected: string | null,
): readonly Mark[] {
  if (spot === undefined || position.at === null) return [];
  const [cx, cy] = spot;
  const state = states[position.id];
  const isSelected = position.id === selected;
  const size = isSelected ? SIZES.selected : hasFinding(state) ? SIZES.finding : SIZES.plain;
  const mark: GradeMark = { ...gradeOfState(state), cx, cy, size };
  const ring: Mark = { kind: "circle", cx, cy, r: 18, stroke: { colour: "accent", width: strokes.selected } };
  return isSelected ? [mark, ring] : [mark];
}

/** Name of a sheet at its upper left, what is to be said of its geometry, and how much of it has been looked at. */
export function drawSheetHead(
  place: SheetPlace,
  name: string,
  list: readonly Position[],
  { states, type, note }: { readonly states: PositionStates; readonly type: TypeScale; readonly note: string | null },
): readonly Mark[] {
  const y = place.y + 27;
  const words = `${countSeen(list, states)} of ${list.length} looked at`;
  const noteX = place.x + computeStyleWidth(name, "large-bold", type) + 14;
  return [
    { kind: "text", x: place.x, y, text: name, style: "large-bold" },
    ...(note === null ? [] : [{ kind: "text", x: noteX, y, text: note, style: "note" } as const]),
    { kind: "text", x: place.x + place.width, y, text: words, style: "label-second", anchor: "end" },
  ];
}
