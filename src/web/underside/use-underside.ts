import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useMemo } from "react";
import type { PositionState, PositionStates } from "#drawing";
import { type Position, positionsOf } from "../car.ts";
import type { LoadedFamily } from "../server/families.ts";
import { formatMarks, parseMarks, withMark } from "./marks-in-address.ts";
import { gradeOfMark, type PositionMark, type PositionMarks, wordsOfMark } from "./position-mark.ts";

const familyRoute = getRouteApi("/families/$familyId");
const undersideRoute = getRouteApi("/families/$familyId/underside");

export interface Underside {
  readonly loaded: LoadedFamily;
  readonly positions: readonly Position[];
  readonly marks: PositionMarks;
  /** Entries of the address that name no mark or no position of this family. */
  readonly unread: readonly string[];
  readonly states: PositionStates;
  readonly selected: Position | null;
  readonly select: (id: string) => void;
  /** Marks the selected position anew; null takes its mark off. */
  readonly mark: (mark: PositionMark | null) => void;
  /** Marks places as looked at, nothing seen; one step back takes all of them off. */
  readonly markSound: (places: readonly Position[]) => void;
}

const stateOf = (mark: PositionMark): PositionState => {
  const sign = wordsOfMark(mark);
  return { grade: gradeOfMark(mark), ...(sign === null ? {} : { sign }) };
};

const statesOf = (marks: PositionMarks): PositionStates =>
  Object.fromEntries([...marks].map(([id, mark]) => [id, stateOf(mark)]));

/** The underside of the family of this address: what is marked and selected, and how both are changed. */
export const useUnderside = (): Underside => {
  const loaded = familyRoute.useLoaderData();
  const search = undersideRoute.useSearch();
  const navigate = useNavigate();
  const positions = useMemo(() => positionsOf(loaded.family), [loaded.family]);
  const read = useMemo(() => {
    const { marks, unread } = parseMarks(search.marks ?? "");
    const known = new Set(positions.map(({ id }) => id));
    const strangers = [...marks.keys()].filter((id) => !known.has(id));
    return {
      marks: new Map([...marks].filter(([id]) => known.has(id))),
      unread: [...unread, ...strangers],
    };
  }, [search.marks, positions]);
  const states = useMemo(() => statesOf(read.marks), [read.marks]);
  const selected = positions.find(({ id }) => id === search.at) ?? null;
  const go = (next: { readonly marks?: string; readonly at?: string }) =>
    navigate({ to: ".", search: (last: Record<string, unknown>) => ({ ...last, ...next }) });
  return {
    loaded,
    positions,
    ...read,
    states,
    selected,
    select: (at) => void go({ at }),
    markSound: (places) => {
      const sound = places.reduce<PositionMarks>((marks, { id }) => withMark(marks, id, { kind: "sound" }), read.marks);
      void go({ marks: formatMarks(sound) });
    },
    mark: (mark) => {
      if (selected !== null) void go({ marks: formatMarks(withMark(read.marks, selected.id, mark)) });
    },
  };
};
