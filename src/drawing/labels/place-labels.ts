import type { Spot } from "../path.ts";
import { solveAssignment } from "./assignment.ts";
import { type Segment, segmentsCross } from "./crossing.ts";

export interface LabelRequest {
  readonly id: string;
  /** What the leader points at. */
  readonly point: Spot;
  /** Height the label takes, page units. */
  readonly height: number;
}

/** A column of labels on one side of a drawing. */
export interface LabelColumn {
  readonly side: "left" | "right";
  /** Where leaders bend, between the column and the drawing. */
  readonly kneeX: number;
  readonly top: number;
  readonly bottom: number;
  /** From the top of a label to where its leader leaves it. */
  readonly portOffset: number;
}

export interface PlacedLabel {
  readonly id: string;
  readonly side: "left" | "right";
  /** Upper edge of the label. */
  readonly top: number;
  readonly knee: Spot;
}

/** Labels that found no room stand in `left`, in the order they were asked for. */
export interface LabelPlacement {
  readonly placed: readonly PlacedLabel[];
  readonly left: readonly string[];
}

/** A fixed place for one label. */
export interface LabelSlot {
  readonly column: LabelColumn;
  readonly top: number;
  readonly knee: Spot;
}

/** Equal slots from top to bottom of each column. */
function slotsOf(columns: readonly LabelColumn[], height: number): readonly LabelSlot[] {
  return columns.flatMap((column) => {
    const room = column.bottom - column.top;
    const count = Math.floor(room / height + 1e-9);
    const pitch = count === 0 ? 0 : room / count;
    return Array.from({ length: count }, (_, i) => {
      const top = column.top + i * pitch;
      return { column, top, knee: [column.kneeX, top + column.portOffset] as const };
    });
  });
}

/**
 * Upper edges of labels in a fixed order: as near to where each would like to be as their heights allow
 * (least squares under order, by pooling neighbours), inside [top, bottom].
 */
function spread(wanted: readonly number[], heights: readonly number[], top: number, bottom: number): readonly number[] {
  const total = heights.reduce((sum, h) => sum + h, 0);
  const before = heights.map((_, i) => heights.slice(0, i).reduce((sum, h) => sum + h, 0));
  const blocks: { sum: number; count: number }[] = [];
  for (const [i, want] of wanted.entries()) {
    blocks.push({ sum: want - (before[i] ?? 0), count: 1 });
    for (;;) {
      const last = blocks.at(-1);
      const previous = blocks.at(-2);
      if (last === undefined || previous === undefined || previous.sum / previous.count <= last.sum / last.count) break;
      previous.sum += last.sum;
      previous.count += last.count;
      blocks.pop();
    }
  }
  const highest = bottom - total;
  const starts = blocks.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
  return starts.map((start, i) => Math.max(top, Math.min(start, highest)) + (before[i] ?? 0));
}

/** Number of pairs of leaders that cut each other. */
export function countCrossings(leaders: readonly Segment[]): number {
  let count = 0;
  for (const [i, a] of leaders.entries()) for (const b of leaders.slice(i + 1)) if (segmentsCross(a, b)) count += 1;
  return count;
}

const leaderOf = (knee: Spot, request: LabelRequest): Segment => [knee, request.point];
const kneeAt = (column: LabelColumn, top: number): Spot => [column.kneeX, top + column.portOffset];

/** The order of labels down one column whose leaders, from evenly spread ports, are shortest in sum; such leaders do not cross. */
function orderInColumn(requests: readonly LabelRequest[], column: LabelColumn): readonly LabelRequest[] {
  const pitch = (column.bottom - column.top) / Math.max(requests.length, 1);
  const knees = requests.map((_, i) => kneeAt(column, column.top + i * pitch));
  const cost = requests.map(({ point }) => knees.map((knee) => Math.hypot(point[0] - knee[0], point[1] - knee[1])));
  const slot = requests.length === 0 ? [] : solveAssignment(cost);
  return requests
    .map((request, i) => ({ request, place: slot[i] ?? i }))
    .toSorted((a, b) => a.place - b.place)
    .map(({ request }) => request);
}

/** Exchanges of crossing neighbours tried before labels are left where they are. */
const MOST_EXCHANGES = 200;

/**
 * Places labels of any height in one column beside a drawing: as near to their points as their heights allow, in an
 * order in which no two leaders cross.
 * @param requests in order of importance: where there is no room for all, the last ones are left out
 */
export function placeInColumn(requests: readonly LabelRequest[], column: LabelColumn): LabelPlacement {
  const room = column.bottom - column.top;
  let used = 0;
  const taken = requests.filter(({ height }) => {
    used += height;
    return used <= room + 1e-9;
  });
  let order = [...orderInColumn(taken, column)];
  const topsOf = (list: readonly LabelRequest[]) =>
    spread(
      list.map(({ point }) => point[1] - column.portOffset),
      list.map(({ height }) => height),
      column.top,
      column.bottom,
    );
  let tops = topsOf(order);
  for (let tries = 0; tries < MOST_EXCHANGES; tries++) {
    const leaders = order.map((request, i) => leaderOf(kneeAt(column, tops[i] ?? column.top), request));
    const pair = firstCrossing(leaders);
    if (pair === null) break;
    const next = [...order];
    const [a, b] = [order[pair[0]], order[pair[1]]];
    if (a === undefined || b === undefined) break;
    next[pair[0]] = b;
    next[pair[1]] = a;
    order = next;
    tops = topsOf(order);
  }
  const placed = order.map((request, i) => {
    const top = tops[i] ?? column.top;
    return { id: request.id, side: column.side, top, knee: kneeAt(column, top) };
  });
  return { placed, left: requests.filter((request) => !taken.includes(request)).map(({ id }) => id) };
}

function firstCrossing(leaders: readonly Segment[]): readonly [number, number] | null {
  for (const [i, a] of leaders.entries()) {
    for (const [j, b] of leaders.entries()) if (j > i && segmentsCross(a, b)) return [i, j];
  }
  return null;
}

/**
 * Hands slots out so that the leaders are shortest in sum: two straight leaders that crossed would be shorter exchanged,
 * so none cross.
 * @param requests in order of importance: where there are fewer slots, the last ones are left out
 */
export function placeOnSlots<S extends LabelSlot>(
  requests: readonly LabelRequest[],
  slots: readonly S[],
): readonly { readonly request: LabelRequest; readonly slot: S }[] {
  const taken = requests.slice(0, slots.length);
  if (taken.length === 0) return [];
  const distances = taken.map(({ point }) =>
    slots.map(({ knee }) => Math.hypot(point[0] - knee[0], point[1] - knee[1])),
  );
  const chosen = solveAssignment(distances);
  return taken.flatMap((request, i) => {
    const slot = slots[chosen[i] ?? -1];
    return slot === undefined ? [] : [{ request, slot }];
  });
}

/**
 * Gives every label of one height a place in one of the columns so that no two labels overlap and no two leaders cross:
 * on equal slots first, then each column is pulled toward the points, in the same order, where that keeps leaders from
 * crossing.
 * @param requests in order of importance: where there is no room for all, the last ones are left out
 */
export function placeInColumns(requests: readonly LabelRequest[], columns: readonly LabelColumn[]): LabelPlacement {
  const tallest = Math.max(1, ...requests.map((request) => request.height));
  let current: readonly { readonly request: LabelRequest; readonly slot: LabelSlot }[] = placeOnSlots(
    requests,
    slotsOf(columns, tallest),
  );
  const left = requests.slice(current.length).map(({ id }) => id);
  for (const column of columns) {
    const own = current.filter(({ slot }) => slot.column === column).toSorted((a, b) => a.slot.top - b.slot.top);
    const tops = spread(
      own.map(({ request }) => request.point[1] - column.portOffset),
      own.map(({ request }) => request.height),
      column.top,
      column.bottom,
    );
    const moved = new Map(own.map((entry, i) => [entry.request.id, tops[i] ?? entry.slot.top]));
    const pulled = current.map((entry) => {
      const top = moved.get(entry.request.id);
      if (top === undefined) return entry;
      const knee: Spot = [column.kneeX, top + column.portOffset];
      return { request: entry.request, slot: { column, top, knee } };
    });
    if (countCrossings(pulled.map(({ request, slot }) => [slot.knee, request.point])) === 0) current = pulled;
  }
  const placed = current.map(({ request, slot }) => ({
    id: request.id,
    side: slot.column.side,
    top: slot.top,
    knee: slot.knee,
  }));
  return { placed, left };
}
