import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import { HAND_MEANS, type HandQuestion, type HandWay, type Held } from "#casework";
import { metresFromMm } from "#quantity";
import { type Corner, cornerOf, type Family, type Position, positionsOf } from "../car.ts";
import { useDragged } from "../geometry/use-dragged.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { HAND_WAYS, type HandWayName, type HoldSearch, mostOf } from "./hold-search.ts";
import type { AskedHand, AskedHold, AskedWays } from "./use-hold.ts";

const familyRoute = getRouteApi("/families/$familyId");
const holdRoute = getRouteApi("/families/$familyId/hold");

/** Play that is looked at where nobody has measured any, mm (an assumption, and said). */
export const ASSUMED_PLAY_MM = 1;
/** Force of a push at the tyre's edge at first, N (common practice, from memory). */
const USUAL_PUSH = 200;

const usualOf = (way: HandWayName): number =>
  way === "bar" ? HAND_MEANS.bar : way === "12-6" || way === "3-9" ? HAND_MEANS.rock : USUAL_PUSH;

/** Torn grades and amounts of play a joint can be looked at as. */
export const faultsOffered = (family: Family, position: Position): readonly string[] => {
  const { tornGrades, loose } = possibleFaultsAt(family, position);
  return [
    ...tornGrades.toReversed().map((grade) => `torn-${grade}`),
    ...(loose ? ["loose-1", "loose-0.5", "loose-2"] : []),
  ];
};

const faultOf = (words: string): HandQuestion["fault"] | null => {
  const [kind, amount = ""] = words.split("-");
  const number = Number(amount);
  if (kind === "torn" && (number === 1 || number === 2 || number === 3)) return { kind: "torn", grade: number };
  if (kind === "loose" && number > 0) return { kind: "loose", play: metresFromMm(number), assumed: true };
  return null;
};

const heldOf = (key: string): Held =>
  key === "ride"
    ? { kind: "ride" }
    : key.startsWith("under/")
      ? { kind: "under", part: key.slice(6) }
      : { kind: "hanging" };

const wayOf = (name: HandWayName, by: number): HandWay => {
  if (name === "bar") return { kind: "bar", force: by };
  if (name === "12-6" || name === "3-9") return { kind: "rock", at: name, moment: by };
  return { kind: "push", at: name, force: by };
};

export interface HoldView {
  readonly family: Family;
  readonly corner: Corner;
  readonly search: HoldSearch;
  /** Joints of this corner the linkage computes with. */
  readonly joints: readonly Position[];
  readonly selected: Position | null;
  /** Key of the state asked for; null: the best of the joint looked at. */
  readonly held: string | null;
  readonly fault: string | null;
  readonly offered: readonly string[];
  readonly way: HandWayName;
  readonly by: number;
  readonly asked: AskedHold;
  readonly stranger: string | null;
  readonly change: (change: Partial<Record<keyof HoldSearch, string | number | undefined>>) => void;
  /** Another corner, no joint of it chosen. */
  readonly chooseCorner: (corner: Corner) => void;
  /** The best way of holding the joint looked at, again. */
  readonly bestWay: () => void;
  readonly setBy: (by: number) => void;
  /** The hand test in a state; null where no joint is looked at or nothing can be wrong with it. */
  readonly handIn: (state: string) => AskedHand | null;
  /** The same by every way of the hand with its usual force, in the order of HAND_WAYS. */
  readonly waysIn: (state: string) => AskedWays | null;
}

/** What the sheet of load states of this address shows. */
export const useHoldView = (): HoldView => {
  const { family } = familyRoute.useLoaderData();
  const search = holdRoute.useSearch();
  const navigate = useNavigate({ from: "/families/$familyId/hold" });
  const fromPlace = positionsOf(family).find(({ id }) => id === search.at);
  const corner: Corner = search.corner ?? (fromPlace ? cornerOf(fromPlace) : null) ?? "front-left";
  const joints = useMemo(
    () => positionsOf(family).filter((p) => p.joint !== null && cornerOf(p) === corner),
    [family, corner],
  );
  const selected = joints.find(({ id }) => id === search.at) ?? null;
  const offered = useMemo(() => (selected === null ? [] : faultsOffered(family, selected)), [family, selected]);
  const fault = search.as !== undefined && faultOf(search.as) !== null ? search.as : (offered[0] ?? null);
  const way = search.way ?? (search.held === "ride" ? "bar" : "3-9");
  const addressed = Math.min(search.by ?? usualOf(way), mostOf(way));
  const write = useCallback(
    (by: number) => void navigate({ search: (last) => ({ ...last, by }), replace: true }),
    [navigate],
  );
  const [by, setBy] = useDragged(addressed, write);
  const asked = useMemo((): AskedHold => ({ family, corner }), [family, corner]);
  const handIn = useCallback(
    (state: string): AskedHand | null => {
      const what = fault === null ? null : faultOf(fault);
      if (selected === null || what === null) return null;
      const question = { corner, held: heldOf(state), position: selected.id, fault: what, way: wayOf(way, by) };
      return { family, question };
    },
    [family, corner, selected, fault, way, by],
  );
  const waysIn = useCallback(
    (state: string): AskedWays | null => {
      const what = fault === null ? null : faultOf(fault);
      if (selected === null || what === null) return null;
      const of = { corner, held: heldOf(state), position: selected.id, fault: what };
      return { family, questions: HAND_WAYS.map((name) => ({ ...of, way: wayOf(name, usualOf(name)) })) };
    },
    [family, corner, selected, fault],
  );
  const change = useCallback(
    (changed: Partial<Record<keyof HoldSearch, string | number | undefined>>) =>
      void navigate({ search: (last) => withoutNothing({ ...last, ...changed }) }),
    [navigate],
  );
  const chooseCorner = useCallback(
    (chosen: Corner) => change({ corner: chosen, at: undefined, as: undefined, held: undefined }),
    [change],
  );
  const bestWay = useCallback(() => change({ held: undefined }), [change]);
  return {
    family,
    corner,
    search,
    joints,
    selected,
    held: search.held ?? null,
    fault,
    offered,
    way,
    by,
    asked,
    stranger: search.at !== undefined && selected === null ? search.at : null,
    change,
    chooseCorner,
    bestWay,
    setBy,
    handIn,
    waysIn,
  };
};

/** Without the keys that were set to nothing. */
const withoutNothing = (search: Record<string, unknown>): HoldSearch =>
  Object.fromEntries(Object.entries(search).filter(([, value]) => value !== undefined)) as HoldSearch;
