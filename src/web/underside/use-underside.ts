import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useMemo } from "react";
import type { Condition } from "#casework";
import { groupOf, type PlaceGroup, type PositionStates } from "#drawing";
import { type Position, positionsOf } from "../car.ts";
import { conditionOf } from "../effect/condition-in-address.ts";
import { conditionOnAxle } from "../effect/condition-on-axle.ts";
import type { LoadedFamily } from "../server/families.ts";
import { formatMarks, withMark } from "./marks-in-address.ts";
import { readFamilyMarks, statesOf } from "./marks-of-family.ts";
import type { PositionMark, PositionMarks } from "./position-mark.ts";

const familyRoute = getRouteApi("/families/$familyId");
const undersideRoute = getRouteApi("/families/$familyId/underside");

export interface Underside {
  readonly loaded: LoadedFamily;
  readonly positions: readonly Position[];
  readonly marks: PositionMarks;
  /** Entries of the address that name no position of this family, or no mark that can stand there. */
  readonly unread: readonly string[];
  readonly states: PositionStates;
  /** How many places have been looked at; one that could not be reached does not count. */
  readonly seen: number;
  readonly selected: Position | null;
  /** What the selected place is asked about under, as its axle can have it. */
  readonly condition: Condition;
  readonly select: (id: string) => void;
  /** Marks the selected position anew; null takes its mark off. */
  readonly mark: (mark: PositionMark | null) => void;
  /** Marks places as looked at, nothing seen; one step back takes all of them off. */
  readonly markSound: (places: readonly Position[]) => void;
  /** Puts all marks in the place of those there are, as formatMarks writes them. */
  readonly setMarks: (marks: string) => void;
}

/** The underside of the family of this address: what is marked and selected, and how both are changed. */
export const useUnderside = (group: PlaceGroup | null = null): Underside => {
  const loaded = familyRoute.useLoaderData();
  const search = undersideRoute.useSearch();
  const navigate = useNavigate();
  const { family } = loaded;
  const positions = useMemo(() => positionsOf(family), [family]);
  const read = useMemo(() => readFamilyMarks(family, positions, search.marks ?? ""), [family, positions, search.marks]);
  const states = useMemo(() => statesOf(positions, read.marks), [positions, read.marks]);
  const found = positions.find(({ id }) => id === search.at) ?? null;
  // A place that lies elsewhere is not what an opened corner is about.
  const selected = found === null || group === null || groupOf(found) === group ? found : null;
  const condition = useMemo(
    () => conditionOnAxle(family[selected?.axle ?? "rear"], conditionOf(search)),
    [family, selected?.axle, search],
  );
  const go = (next: { readonly marks?: string; readonly at?: string }) =>
    navigate({ to: ".", search: (last: Record<string, unknown>) => ({ ...last, ...next }) });
  return {
    loaded,
    positions,
    ...read,
    states,
    seen: Object.keys(states).length,
    selected,
    condition,
    select: (at) => void go({ at }),
    markSound: (places) => {
      const sound = places.reduce<PositionMarks>((marks, { id }) => withMark(marks, id, { kind: "sound" }), read.marks);
      void go({ marks: formatMarks(sound) });
    },
    mark: (mark) => {
      if (selected !== null) void go({ marks: formatMarks(withMark(read.marks, selected.id, mark)) });
    },
    setMarks: (marks) => void go({ marks }),
  };
};
