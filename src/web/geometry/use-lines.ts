import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useMemo } from "react";
import type { Condition, RubberFault, TravelFigure, TravelSheetQuestion, TravelSubject } from "#casework";
import { metresFromMm } from "#quantity";
import type { Corner, Family, Position } from "../car.ts";
import { figuresOf, MOST_LINES } from "../travel/line-search.ts";
import { formatMark, parseMark } from "../underside/marks-in-address.ts";
import { faultOfMark, type PartFault } from "../underside/position-mark.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { canStandAt } from "../underside/signs-at.ts";
import type { GeometrySearch } from "./geometry-search.ts";

const geometryRoute = getRouteApi("/families/$familyId/geometry");
const BETWEEN = "~";

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

/** What else an address draws a place as: what can stand there, no kind twice and none it is looked at as. */
const alsoOf = (
  family: Family,
  position: Position | null,
  shown: PartFault | null,
  text: string | undefined,
): readonly RubberFault[] => {
  if (position === null || shown === null || shown.kind === "fluid-gone" || text === undefined) return [];
  const kinds = new Map<string, RubberFault>();
  for (const part of text.split(BETWEEN)) {
    const mark = parseMark(part);
    const fault = faultOfMark(mark);
    if (mark === null || fault === null || fault.kind === shown.kind || kinds.has(fault.kind)) continue;
    if (canStandAt(position, possibleFaultsAt(family, position), mark)) kinds.set(fault.kind, fault);
  }
  return [...kinds.values()];
};

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
  const also = useMemo(() => alsoOf(family, position, shown, search.also), [family, position, shown, search.also]);
  const subjects = useMemo((): readonly TravelSubject[] => {
    const faults = position === null || shown === null || shown.kind === "fluid-gone" ? [] : [shown, ...also];
    const all: readonly TravelSubject[] = [
      { kind: "sound" },
      ...faults.map((fault) => ({ kind: "rubber" as const, position: position?.id ?? "", fault })),
      ...(lowered === undefined ? [] : [{ kind: "lowered" as const, by: metresFromMm(lowered) }]),
    ];
    return all.slice(0, MOST_LINES);
  }, [position, shown, also, lowered]);
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
