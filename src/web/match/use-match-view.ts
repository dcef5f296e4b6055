import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import type { MatchAsked } from "#casework";
import type { Corner, Family } from "../car.ts";
import { useDragged } from "../geometry/use-dragged.ts";
import { type Entries, formatEntries, questionOf, readEntries, type Trouble } from "./match-entries.ts";

const familyRoute = getRouteApi("/families/$familyId");
const matchRoute = getRouteApi("/families/$familyId/match");

export interface MatchView {
  readonly family: Family;
  readonly corner: Corner;
  readonly entries: Entries;
  readonly setEntries: (entries: Entries) => void;
  readonly chooseCorner: (corner: Corner) => void;
  /** Null with fewer than three whole rows, or while something is to be put right. */
  readonly asked: MatchAsked | null;
  readonly whole: number;
  readonly troubles: readonly Trouble[];
}

/** What matching of this address shows; what is typed goes into the address once it rests. */
export const useMatchView = (): MatchView => {
  const { family } = familyRoute.useLoaderData();
  const search = matchRoute.useSearch();
  const navigate = useNavigate({ from: "/families/$familyId/match" });
  const corner = search.corner ?? "front-left";
  const { read, bench, pm } = search;
  const addressed = useMemo(
    () => readEntries({ ...(read && { read }), ...(bench && { bench }), ...(pm && { pm }) }),
    [read, bench, pm],
  );
  const write = useCallback(
    (entries: Entries) =>
      void navigate({
        search: (last) => ({ ...(last.corner && { corner: last.corner }), ...formatEntries(entries) }),
        replace: true,
      }),
    [navigate],
  );
  const [entries, setEntries] = useDragged(addressed, write);
  const chooseCorner = useCallback(
    (chosen: Corner) => void navigate({ search: ({ bench: _, ...last }) => ({ ...last, corner: chosen }) }),
    [navigate],
  );
  const { asked, whole, troubles } = useMemo(() => questionOf(family, corner, addressed), [family, corner, addressed]);
  return {
    family,
    corner,
    entries,
    setEntries,
    chooseCorner,
    asked,
    whole,
    troubles,
  };
};
