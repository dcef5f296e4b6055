import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useMemo } from "react";
import type { Condition, RubberFault, TravelFigure, TravelSheetQuestion } from "#casework";
import type { Corner, Family, Position } from "../car.ts";
import { figuresOf, MOST_LINES } from "../travel/line-search.ts";
import { formatMark } from "../underside/marks-in-address.ts";
import type { PartFault } from "../underside/position-mark.ts";
import type { GeometrySearch } from "./geometry-search.ts";
import { alsoOf, BETWEEN, subjectsOf } from "./line-subjects.ts";

const geometryRoute = getRouteApi("/families/$familyId/geometry");

/** What is drawn on this sheet besides sound and the one thing the place is looked at as. */
export interface Lines {
  /** What the same place is drawn as besides; each kind once. */
  readonly also: readonly RubberFault[];
  readonly lowered: number | undefined;
  readonly figures: readonly TravelFigure[];
  /** There are as many lines as can be drawn. */
  readonly full: boolean;
  /** All lines at once; null where only sound and the one thing are drawn, as toe and camber. */
  readonly question: TravelSheetQuestion | null;
  /** Draws the place as this besides, or as nothing of that kind. */
  readonly chooseAlso: (kind: RubberFault["kind"], fault: RubberFault | null) => void;
  readonly chooseLowered: (mm: number | undefined) => void;
  readonly chooseFigure: (place: "first" | "second", figure: string) => void;
}

interface LinesSubject {
  readonly family: Family;
  readonly corner: Corner;
  readonly position: Position | null;
  readonly shown: PartFault | null;
  readonly condition: Condition;
}

/** The lines of this address beside the sound corner and the place as it is looked at. */
export const useLines = ({ family, corner, position, shown, condition }: LinesSubject): Lines => {
  const search = geometryRoute.useSearch();
  const navigate = useNavigate({ from: "/families/$familyId/geometry" });
  const { first, second, lowered_mm: lowered } = search;
  const figures = useMemo(() => figuresOf({ ...(first && { first }), ...(second && { second }) }), [first, second]);
  const also = useMemo(
    () => alsoOf(family, position, shown, search.also, lowered !== undefined),
    [family, position, shown, search.also, lowered],
  );
  const subjects = useMemo(() => subjectsOf(position, shown, also, lowered), [position, shown, also, lowered]);
  const usual = also.length === 0 && lowered === undefined && figures[0] === "toe" && figures[1] === "camber";
  const question = useMemo(
    (): TravelSheetQuestion | null =>
      shown?.kind === "fluid-gone" || (shown !== null && usual)
        ? null
        : { family, corner, condition, subjects, figures },
    [family, corner, condition, subjects, figures, shown, usual],
  );
  const change = (changed: Partial<Record<keyof GeometrySearch, string | number | undefined>>): void =>
    void navigate({
      search: (last) =>
        Object.fromEntries(
          Object.entries({ ...last, ...changed }).filter(([, value]) => value !== undefined),
        ) as GeometrySearch,
    });
  return {
    also,
    lowered,
    figures,
    full: subjects.length >= MOST_LINES,
    question,
    chooseAlso: (kind, fault) => {
      const rest = also.filter((one) => one.kind !== kind);
      const marks = [...rest, ...(fault === null ? [] : [fault])].map(formatMark);
      change({ also: marks.length === 0 ? undefined : marks.join(BETWEEN) });
    },
    chooseLowered: (mm) => change({ lowered_mm: mm }),
    chooseFigure: (place, figure) => change({ [place]: figure }),
  };
};
