import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import type { Condition, FaultQuestion } from "#casework";
import type { EyePlace } from "#drawing";
import { type Corner, cornerOf, type Family, type Position, positionsOf } from "../car.ts";
import { conditionOf, searchOfCondition } from "../effect/condition-in-address.ts";
import { conditionOnAxle } from "../effect/condition-on-axle.ts";
import { questionAt, USUAL_CONDITION } from "../effect/usual-condition.ts";
import type { ShakeSearch } from "../shake/shake-search.ts";
import { type ShakeSetting, useShakeSetting } from "../shake/use-shake-setting.ts";
import { formatMark, formatMarks, parseMark, withMark } from "../underside/marks-in-address.ts";
import { readFamilyMarks } from "../underside/marks-of-family.ts";
import {
  balancedFault,
  isSameMark,
  type PartFault,
  type PositionMark,
  partFaultOfMark,
} from "../underside/position-mark.ts";
import { isComputed, possibleFaultsAt } from "../underside/rubber-at.ts";
import { canStandAt } from "../underside/signs-at.ts";
import { useKeptMarks } from "../underside/use-kept-marks.ts";
import { useEye } from "./eye-in-address.ts";
import { useDragged } from "./use-dragged.ts";
import { type Lines, useLines } from "./use-lines.ts";

const familyRoute = getRouteApi("/families/$familyId");
const geometryRoute = getRouteApi("/families/$familyId/geometry");

/** The corner that is drawn where nothing says which. */
const FIRST_CORNER: Corner = "rear-left";

export interface Geometry {
  readonly family: Family;
  /** Every place the linkage can compute, in the order of the family. */
  readonly positions: readonly Position[];
  /** The place that is looked at: the one the address names, else the first that is marked; null where nothing is. */
  readonly position: Position | null;
  /** The place the address names, where this family has none of that name to compute with. */
  readonly stranger: string | null;
  /** What is marked there on the underside; this sheet changes it only when asked to. */
  readonly mark: PositionMark | null;
  /** What it is looked at as; null where nothing is marked and nothing chosen. */
  readonly shown: PartFault | null;
  /** The corner of that place, else the one the address names: drawn sound. */
  readonly corner: Corner;
  readonly condition: Condition;
  readonly question: FaultQuestion | null;
  readonly chooseCorner: (corner: Corner) => void;
  readonly choosePosition: (id: string) => void;
  /** Looks at the place as something, without marking it; null: as it is marked. */
  readonly lookAs: (fault: PartFault | null) => void;
  /** Marks the place on the underside as it is looked at. */
  readonly markAsShown: () => void;
  readonly setCondition: (condition: Condition) => void;
  readonly shakeSetting: ShakeSetting;
  readonly setShakeSetting: (setting: ShakeSetting) => void;
  readonly resetCondition: () => void;
  /** From where the corner is seen in space, and how to move there. */
  readonly eye: readonly [eye: EyePlace, setEye: (eye: EyePlace) => void];
  /** What is drawn besides. */
  readonly lines: Lines;
}

/** What the address asks to look at a place as; null where it says nothing that can be computed there. */
const viewedAs = (family: Family, position: Position | null, text: string | undefined): PartFault | null => {
  const mark = text === undefined ? null : parseMark(text);
  if (position === null || mark === null || !canStandAt(position, possibleFaultsAt(family, position), mark))
    return null;
  return partFaultOfMark(mark);
};

/** What this address looks at: the place, what is marked there, and what it is looked at as. */
const useSubject = (family: Family) => {
  const search = geometryRoute.useSearch();
  const all = useMemo(() => positionsOf(family), [family]);
  const positions = useMemo(
    () => all.filter((position) => isComputed(possibleFaultsAt(family, position))),
    [all, family],
  );
  const { marks } = useMemo(() => readFamilyMarks(family, all, search.marks ?? ""), [family, all, search.marks]);
  const named = positions.find(({ id }) => id === search.at);
  const marked = positions.find(({ id }) => partFaultOfMark(marks.get(id) ?? null) !== null);
  const position = named ?? (search.at === undefined ? marked : undefined) ?? null;
  const mark = position === null ? null : (marks.get(position.id) ?? null);
  const shown = useMemo(
    () => viewedAs(family, position, search.as) ?? partFaultOfMark(mark),
    [family, position, search.as, mark],
  );
  const stranger = search.at === undefined || named !== undefined ? null : search.at;
  return { positions, position, marks, mark, shown, stranger };
};

/** What the geometry sheet of this address shows; "arriving" until it is decided which marks it begins with. */
export const useGeometry = (): Geometry | "arriving" => {
  const { family } = familyRoute.useLoaderData();
  const search = geometryRoute.useSearch();
  const navigate = useNavigate({ from: "/families/$familyId/geometry" });
  const { marks, ...subject } = useSubject(family);
  const { position, mark, shown } = subject;
  const arrived = useKeptMarks(
    family.id,
    search.marks,
    (kept) => void navigate({ search: (last) => ({ ...last, marks: kept }), replace: true }),
  );
  const corner = (position === null ? null : cornerOf(position)) ?? search.corner ?? FIRST_CORNER;
  const axle = family[corner.startsWith("front") ? "front" : "rear"];
  const addressed = useMemo(() => conditionOnAxle(axle, conditionOf(search)), [axle, search]);
  const write = useCallback(
    (condition: Condition) =>
      void navigate({ search: (last) => ({ ...last, ...searchOfCondition(condition) }), replace: true }),
    [navigate],
  );
  const [condition, setCondition] = useDragged(addressed, write);
  const writeShake = useCallback(
    (shake: ShakeSearch) => void navigate({ search: (last) => ({ ...last, ...shake }), replace: true }),
    [navigate],
  );
  const [shakeSetting, setShakeSetting] = useShakeSetting(search, writeShake);
  const resetCondition = useCallback(() => setCondition(USUAL_CONDITION), [setCondition]);
  const chooseCorner = useCallback(
    (chosen: Corner) =>
      void navigate({ search: ({ at: _, as: __, also: ___, ...last }) => ({ ...last, corner: chosen }) }),
    [navigate],
  );
  const question = useMemo(() => questionAt(position, balancedFault(shown), condition), [position, shown, condition]);
  const eye = useEye(
    search,
    useCallback((place) => void navigate({ search: (last) => ({ ...last, ...place }), replace: true }), [navigate]),
  );
  const lines = useLines({ family, corner, position, shown, condition });
  if (!arrived) return "arriving";
  return {
    family,
    ...subject,
    corner,
    condition,
    question,
    chooseCorner,
    choosePosition: (at) => void navigate({ search: ({ as: _, also: __, ...last }) => ({ ...last, at }) }),
    lookAs: (fault) =>
      void navigate({
        search: ({ as: _, ...last }) => ({
          ...last,
          ...(position === null ? {} : { at: position.id }),
          ...(fault === null || (mark !== null && isSameMark(fault, mark)) ? {} : { as: formatMark(fault) }),
        }),
      }),
    markAsShown: () => {
      if (position === null || shown === null) return;
      const next = formatMarks(withMark(marks, position.id, shown));
      void navigate({ search: ({ as: _, ...last }) => ({ ...last, at: position.id, marks: next }) });
    },
    setCondition,
    shakeSetting,
    setShakeSetting,
    resetCondition,
    eye,
    lines,
  };
};
