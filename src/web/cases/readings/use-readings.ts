import { useMemo, useState } from "react";
import { computeReadingUncertainty, type LoadState, type ReadingGroup, splitByWork, usualInstrument } from "#casework";
import { type Case, type NewLook, useCase } from "../case/case-context.tsx";
import { isDoubted } from "../case/case-record.ts";
import { canBeConfirmed } from "../unsent/can-be-confirmed.ts";
import type { UnsentEntry, UnsentLook } from "../unsent/entry.ts";
import { outbox, useOutbox } from "../unsent/workshop-outbox.ts";
import {
  askedKey,
  type Cell,
  cellsOf,
  cellText,
  keyOf,
  openAsked,
  parseCell,
  READINGS,
  readTaken,
  type TakenReadings,
} from "./reading-cells.ts";

/** How a group is being read: what with, and in which state of load. */
export interface Means {
  readonly instrument: string | null;
  readonly loadState: LoadState;
}

const USUAL_STATE: Readonly<Record<ReadingGroup, LoadState>> = {
  heights: "standing",
  pressures: "standing",
  tread: "hanging",
  pads: "hanging",
  discs: "hanging",
  alignment: "standing",
};

const usualMeans = (group: ReadingGroup): Means => {
  const first = cellsOf(group)[0];
  return {
    instrument: first === undefined ? null : usualInstrument(first.reading.quantity),
    loadState: USUAL_STATE[group],
  };
};

const PLACES = new Set(READINGS.map(askedKey));

/** True for a reading that was refused. */
export const isRefusedLook = (entry: UnsentEntry): entry is UnsentLook =>
  entry.what === "look" && entry.state.kind === "refused" && entry.look.content.kind === "reading";

/** True for a reading that was refused, or will be asked about as soon as the store answers. */
const isAskedAbout = (entry: UnsentEntry): entry is UnsentLook =>
  entry.what === "look" &&
  entry.look.content.kind === "reading" &&
  (entry.state.kind === "refused" || (entry.state.kind === "waiting" && isDoubted(entry)));

/** True for a refused reading of one of the fields of the readings' page. */
export const isRefusedReading = (entry: UnsentEntry): boolean =>
  isRefusedLook(entry) && PLACES.has(`${entry.look.place}|${String(entry.look.content.quantity)}`);

const pointOf = (point: unknown): string | null => (typeof point === "string" ? point : null);

/** A reading that was refused or is doubted, with the key of its field and its key in the outbox. */
export interface RefusedReading {
  readonly entryKey: string;
  readonly entry: UnsentLook;
  readonly cellKey: string;
}

export interface Readings extends TakenReadings {
  readonly held: Case;
  /** What was taken at earlier visits. */
  readonly past: TakenReadings;
  readonly meansOf: (group: ReadingGroup) => Means;
  readonly setMeans: (group: ReadingGroup, means: Means) => void;
  readonly refused: readonly RefusedReading[];
  /** True where a field takes how the car leaves: work has begun, and what was found keeps its own place. */
  readonly leaves: (cell: Cell) => boolean;
  /** What was found, as text, in a field that takes how the car leaves; null elsewhere. */
  readonly foundOf: (cell: Cell) => string | null;
  /** Takes back what was found, so that the next reading tells how the car came; null where it can no longer be. */
  readonly takeFoundBack: (cell: Cell) => (() => void) | null;
  /** Text on record in a field, or as it was typed and refused; what was found before the work is none of it. */
  readonly textOf: (cell: Cell) => string;
  /** Keeps what was typed, read by the means of its group or by these; false where it is no number. */
  readonly keep: (cell: Cell, text: string, means?: Means) => boolean;
  /** Says that a reading that was asked about stands: it was read again and is the same. */
  readonly confirm: (cell: Cell) => void;
  /** Says of everything still open in these groups that it was not taken: one record each. */
  readonly markNotTaken: (groups: readonly ReadingGroup[]) => void;
  /** Takes such marks of a group back. */
  readonly askAgain: (group: ReadingGroup) => void;
}

const typedText = (entry: UnsentLook, { reading }: Cell): string => {
  const value = Object.entries(entry.look.content).find(([key]) => key.startsWith("value"))?.[1];
  return typeof value === "number"
    ? String(value).replace("-", "−")
    : cellText({ quantity: reading.quantity, value: Number.NaN });
};

/** The readings of this visit: what is on record in each field, and how more is recorded. */
export const useReadings = (): Readings => {
  const held = useCase();
  const { entries } = useOutbox();
  const [means, setMeansOf] = useState<Partial<Record<ReadingGroup, Means>>>({});
  const now = useMemo(() => readTaken(held.looks), [held.looks]);
  const past = useMemo(() => readTaken(held.past), [held.past]);
  const family = held.family?.family ?? null;
  const split = useMemo(
    () =>
      splitByWork({
        looks: held.looks,
        past: held.past,
        family,
        visit: held.visit,
        jobCard: held.jobCard,
        plan: held.plan,
      }),
    [held.looks, held.past, family, held.jobCard, held.plan, held.visit],
  );
  const found = useMemo(() => readTaken(split.found), [split]);
  const left = useMemo(() => readTaken(split.left), [split]);
  const refused = useMemo(
    () =>
      [...entries].flatMap(([entryKey, entry]): RefusedReading[] => {
        if (!isAskedAbout(entry) || entry.look.visit !== held.visitId) return [];
        const { place, content } = entry.look;
        return [{ entryKey, entry, cellKey: keyOf(place, String(content.quantity), pointOf(content.point)) }];
      }),
    [entries, held.visitId],
  );
  const meansOf = (group: ReadingGroup): Means => means[group] ?? usualMeans(group);
  const refusedIn = (cell: Cell) => refused.find((one) => one.cellKey === cell.key);
  const leaves = (cell: Cell): boolean =>
    left.taken.has(cell.key) || split.leavesAt(cell.reading.place, found.taken.has(cell.key));
  const standing = (cell: Cell) => (leaves(cell) ? left : found).taken.get(cell.key);
  const textOf = (cell: Cell): string => {
    const odd = refusedIn(cell);
    if (odd !== undefined) return typedText(odd.entry, cell);
    const taken = standing(cell);
    return taken === undefined ? "" : cellText(taken);
  };
  const keep = (cell: Cell, text: string, by: Means = meansOf(cell.reading.group)): boolean => {
    const value = parseCell(text, cell.reading);
    if (value === undefined) return false;
    const odd = refusedIn(cell);
    if (odd !== undefined) outbox.drop(odd.entryKey);
    const last = standing(cell);
    if (value === null) {
      if (last !== undefined)
        held.record([{ place: cell.reading.place, content: { kind: "withdrawn", look: last.look.id } }]);
      return true;
    }
    const { quantity, place } = cell.reading;
    // The same figure in other signs or another unit is no second reading.
    if (odd === undefined && last !== undefined && cellText({ quantity, value }) === cellText(last)) return true;
    const { instrument, loadState } = by;
    const usual = cell.reading.group === "alignment" ? usualInstrument(quantity) : instrument;
    const u = computeReadingUncertainty(quantity, usual, value);
    held.record([
      { place, content: { kind: "reading", quantity, value, u, point: cell.point }, instrument: usual, loadState },
    ]);
    return true;
  };
  return {
    ...now,
    held,
    past,
    meansOf,
    setMeans: (group, next) => setMeansOf((last) => ({ ...last, [group]: next })),
    refused,
    leaves,
    foundOf: (cell) => {
      const taken = leaves(cell) ? found.taken.get(cell.key) : undefined;
      return taken === undefined ? null : cellText(taken);
    },
    takeFoundBack: (cell) => {
      const taken = leaves(cell) && !left.taken.has(cell.key) ? found.taken.get(cell.key) : undefined;
      const { place } = cell.reading;
      if (taken === undefined || split.leavesAt(place, false)) return null;
      return () => held.record([{ place, content: { kind: "withdrawn", look: taken.look.id } }]);
    },
    textOf,
    keep,
    confirm: (cell) => {
      const odd = refusedIn(cell);
      if (odd !== undefined && canBeConfirmed(odd.entry.state.kind === "refused" ? odd.entry.state.findings : []))
        outbox.confirm(odd.entryKey);
    },
    markNotTaken: (groups) => {
      const open = groups.flatMap((group) => openAsked(group, now));
      held.record(open.map(({ place, quantity }): NewLook => ({ place, content: { kind: "not-taken", quantity } })));
    },
    askAgain: (group) => {
      const marked = READINGS.filter((reading) => reading.group === group).flatMap((reading) =>
        (now.notTaken.get(askedKey(reading)) ?? []).map((look) => ({ place: reading.place, look })),
      );
      held.record(marked.map(({ place, look }): NewLook => ({ place, content: { kind: "withdrawn", look } })));
    },
  };
};
