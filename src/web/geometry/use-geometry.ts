import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useEffect, useMemo, useState } from "react";
import type { Condition, FaultQuestion } from "#casework";
import { type Family, type Position, positionsOf } from "../car.ts";
import { questionAt, USUAL_CONDITION } from "../effect/usual-condition.ts";
import { formatMarks, parseMarks, withMark } from "../underside/marks-in-address.ts";
import { faultOfMark, type PositionMark, type PositionMarks } from "../underside/position-mark.ts";
import { isComputed, possibleFaultsAt } from "../underside/rubber-at.ts";
import { conditionOf, searchOfCondition } from "./geometry-search.ts";

const familyRoute = getRouteApi("/families/$familyId");
const geometryRoute = getRouteApi("/families/$familyId/geometry");
/** A dragged slider writes the address only after it has rested this long, ms. */
const REST_MS = 250;

export interface Geometry {
  readonly family: Family;
  /** Every place the linkage can compute, in the order of the family. */
  readonly positions: readonly Position[];
  readonly position: Position;
  /** The place the address names, where this family has none of that name to compute with. */
  readonly stranger: string | null;
  readonly mark: PositionMark;
  readonly condition: Condition;
  readonly question: FaultQuestion | null;
  readonly choosePosition: (id: string) => void;
  readonly chooseMark: (mark: PositionMark) => void;
  readonly setCondition: (condition: Condition) => void;
  readonly resetCondition: () => void;
}

const usualMark = (family: Family, position: Position): PositionMark => {
  const { tornGrades, loose } = possibleFaultsAt(family, position);
  const grade = tornGrades.at(-1);
  if (grade !== undefined) return { kind: "torn", grade };
  return loose ? { kind: "loose", play: 0.001 } : { kind: "firmer", factor: 2 };
};

/** Where a visitor without a place begins: of the rear left bushes that can be torn the foremost, else the first place. */
const exampleOf = (family: Family, positions: readonly Position[]): Position | undefined => {
  const rearLeft = positions.filter(
    (position) =>
      position.axle === "rear" && position.side === "left" && possibleFaultsAt(family, position).tornGrades.length > 0,
  );
  return rearLeft.toSorted((a, b) => (b.at?.[0] ?? 0) - (a.at?.[0] ?? 0))[0] ?? positions[0];
};

/** The condition as it is dragged, written to the address once it rests; the address wins when it changes by itself. */
const useDraggedCondition = (
  addressed: Condition,
  write: (condition: Condition) => void,
): readonly [Condition, (condition: Condition) => void] => {
  const [dragged, setDragged] = useState<Condition | null>(null);
  const key = JSON.stringify(addressed);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key is the address; what was dragged ends when it changes
  useEffect(() => setDragged(null), [key]);
  useEffect(() => {
    if (dragged === null || JSON.stringify(dragged) === key) return;
    const timer = setTimeout(() => write(dragged), REST_MS);
    return () => clearTimeout(timer);
  }, [dragged, key, write]);
  return [dragged ?? addressed, setDragged];
};

/** What the geometry sheet of this address shows; null where the family has no joint the linkage computes. */
export const useGeometry = (): Geometry | null => {
  const { family } = familyRoute.useLoaderData();
  const search = geometryRoute.useSearch();
  const navigate = useNavigate({ from: "/families/$familyId/geometry" });
  const positions = useMemo(
    () => positionsOf(family).filter((position) => isComputed(possibleFaultsAt(family, position))),
    [family],
  );
  const marks: PositionMarks = useMemo(() => parseMarks(search.marks ?? "").marks, [search.marks]);
  const addressed = useMemo(() => conditionOf(search), [search]);
  const write = useCallback(
    (condition: Condition) =>
      void navigate({ search: (last) => ({ ...last, ...searchOfCondition(condition) }), replace: true }),
    [navigate],
  );
  const [condition, setCondition] = useDraggedCondition(addressed, write);
  const resetCondition = useCallback(() => setCondition(USUAL_CONDITION), [setCondition]);
  const position = positions.find(({ id }) => id === search.at) ?? exampleOf(family, positions);
  const marked = position === undefined ? undefined : marks.get(position.id);
  const mark = useMemo(() => {
    if (position === undefined) return null;
    return marked === undefined || marked.kind === "sound" ? usualMark(family, position) : marked;
  }, [family, position, marked]);
  const question = useMemo(
    () => questionAt(position ?? null, faultOfMark(mark), condition),
    [position, mark, condition],
  );
  if (position === undefined || mark === null) return null;
  return {
    family,
    positions,
    position,
    stranger: search.at === undefined || search.at === position.id ? null : search.at,
    mark,
    condition,
    question,
    choosePosition: (at) => void navigate({ search: (last) => ({ ...last, at }) }),
    chooseMark: (next) =>
      void navigate({
        search: (last) => ({ ...last, at: position.id, marks: formatMarks(withMark(marks, position.id, next)) }),
      }),
    setCondition,
    resetCondition,
  };
};
