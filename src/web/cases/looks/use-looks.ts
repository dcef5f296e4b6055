import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useMemo } from "react";
import {
  countingLooks,
  groupByPlace,
  judgeLooks,
  type LookContent,
  type PlaceFinding,
  type PlaceLooks,
  type SignName,
  type StoredLook,
} from "#casework";
import { groupOf, type PlaceGroup, type PositionStates } from "#drawing";
import { type Position, positionsOf } from "../../car.ts";
import type { LoadedFamily } from "../../server/families.ts";
import { type Case, type NewLook, useCase } from "../case/case-context.tsx";
import { statesOfFindings } from "../case/states-of-looks.ts";
import { lastStroke, rememberStroke } from "./last-stroke.ts";
import { useLoadState } from "./load-state.ts";

const route = getRouteApi("/cases/$visit/underside");

/** What belongs to a place beside what was seen: a photo, a note. */
type Extras = Pick<NewLook, "photo" | "note">;

export interface Looks {
  readonly held: Case;
  readonly loaded: LoadedFamily;
  readonly positions: readonly Position[];
  readonly states: PositionStates;
  readonly seen: number;
  readonly selected: Position | null;
  readonly select: (id: string | null) => void;
  readonly findingAt: (place: string) => PlaceFinding | null;
  readonly looksAt: (place: string) => PlaceLooks | null;
  /** Puts a sign on a place or takes it off again; each is a record of its own. */
  readonly toggleSign: (place: string, sign: SignName) => void;
  /** Looked at, nothing seen; a second time takes it back. */
  readonly toggleNothing: (place: string) => void;
  /** One stroke: one record per place. */
  readonly markRest: (places: readonly Position[]) => void;
  /** Looks of the last such stroke that still count. */
  readonly stroke: readonly StoredLook[];
  readonly takeBack: (looks: readonly StoredLook[]) => void;
  /** Adds a photo or a note to what is on record of a place. */
  readonly attach: (place: string, extras: Extras) => void;
}

/** Signs with one more, or with that one taken off; "cannot be reached" stands alone. */
export const withSign = (signs: readonly SignName[], sign: SignName): readonly SignName[] => {
  if (signs.includes(sign)) return signs.filter((other) => other !== sign);
  return sign === "cannot-reach" ? [sign] : [...signs.filter((other) => other !== "cannot-reach"), sign];
};

const ofKind = (looks: PlaceLooks | null, kind: LookContent["kind"]): readonly StoredLook[] =>
  looks?.looks.filter(({ content }) => content.kind === kind) ?? [];

/** The looks of this visit on its underside, and how more is recorded; `family` is the one of the car. */
export const useLooks = (loaded: LoadedFamily, group: PlaceGroup | null = null): Looks => {
  const held = useCase();
  const { at } = route.useSearch();
  const navigate = useNavigate();
  const [loadState] = useLoadState();
  const { family } = loaded;
  const positions = useMemo(() => positionsOf(family), [family]);
  const findings = useMemo(
    () => judgeLooks(family, held.looks, held.past, held.visit, held.enquiry?.symptoms ?? []),
    [family, held.looks, held.past, held.visit, held.enquiry],
  );
  const states = useMemo(() => statesOfFindings(findings), [findings]);
  const places = useMemo(() => groupByPlace(held.looks), [held.looks]);
  const found = positions.find(({ id }) => id === at) ?? null;
  const looksAt = (place: string): PlaceLooks | null => places.get(place) ?? null;
  const record = (looks: readonly NewLook[]) => held.record(looks.map((look) => ({ loadState, ...look })));
  const takeBack = (looks: readonly StoredLook[]) =>
    void held.record(looks.map(({ id, place }): NewLook => ({ place, content: { kind: "withdrawn", look: id } })));
  const stroke = lastStroke(held.visitId);
  return {
    held,
    loaded,
    positions,
    states,
    seen: Object.keys(states).length,
    // A place that lies elsewhere is not what an opened corner is about.
    selected: found === null || group === null || groupOf(found) === group ? found : null,
    select: (id) =>
      void navigate({
        to: ".",
        search: id === null ? {} : { at: id },
      }),
    findingAt: (place) => findings.find((finding) => finding.place === place) ?? null,
    looksAt,
    toggleSign: (place, sign) => {
      const here = looksAt(place);
      const signs = withSign(here?.signs ?? [], sign);
      if (signs.length === 0) takeBack(ofKind(here, "signs"));
      else record([{ place, content: { kind: "signs", signs } }]);
    },
    toggleNothing: (place) => {
      const nothing = ofKind(looksAt(place), "nothing-seen");
      if (nothing.length > 0 && looksAt(place)?.signs.length === 0) takeBack(nothing);
      else record([{ place, content: { kind: "nothing-seen" } }]);
    },
    markRest: (rest) =>
      rememberStroke(held.visitId, record(rest.map(({ id }) => ({ place: id, content: { kind: "nothing-seen" } })))),
    stroke: countingLooks(held.looks).filter(({ id }) => stroke.includes(id)),
    takeBack,
    // It says nothing of what was seen, so that no sign is recorded again with it.
    attach: (place, extras) => void record([{ place, content: { kind: "not-taken", quantity: null }, ...extras }]),
  };
};
