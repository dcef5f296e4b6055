import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import type { Condition, TravelSheetQuestion, TravelSubject } from "#casework";
import type { EyePlace } from "#drawing";
import { metresFromMm } from "#quantity";
import { type Corner, cornerOf, type Family, type Position, positionsOf } from "../car.ts";
import { conditionOf, searchOfCondition } from "../effect/condition-in-address.ts";
import { conditionOnAxle } from "../effect/condition-on-axle.ts";
import { useEye } from "../geometry/eye-in-address.ts";
import { useDragged } from "../geometry/use-dragged.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { figuresOf, MOST_LINES } from "./line-search.ts";
import { EVERY_RUBBER, firmerOf, TORN_GRADE, type TravelSearch } from "./travel-search.ts";

const familyRoute = getRouteApi("/families/$familyId");
const travelRoute = getRouteApi("/families/$familyId/travel");

/** No force: the bare figures over travel come first. */
const AT_REST: Condition = { contactRise: 0, rack: 0, braking: 0, lateral: 0, drive: 0 };

export interface TravelView {
  readonly family: Family;
  readonly corner: Corner;
  readonly search: TravelSearch;
  /** Places of this corner whose rubber can be torn, or made firmer. */
  readonly tearable: readonly Position[];
  readonly stiffenable: readonly Position[];
  readonly question: TravelSheetQuestion;
  readonly condition: Condition;
  readonly eye: EyePlace;
  /** What the address names that this car line or this corner does not have. */
  readonly strangers: readonly string[];
  /** Id of the car line that stands in the address but is left out, four lines being drawn already; else null. */
  readonly leftOut: string | null;
  readonly change: (change: Partial<Record<keyof TravelSearch, string | number | undefined>>) => void;
  /** Another corner; what was torn or firmer of this one is left behind, all of its rubber is not. */
  readonly chooseCorner: (corner: Corner) => void;
  readonly setCondition: (condition: Condition) => void;
  readonly setEye: (eye: EyePlace) => void;
}

const usualOf = (search: TravelSearch): Condition => {
  const asked = conditionOf(search);
  return {
    contactRise: search.rise_mm === undefined ? AT_REST.contactRise : asked.contactRise,
    rack: search.rack_mm === undefined ? AT_REST.rack : asked.rack,
    braking: search.braking_n ?? AT_REST.braking,
    lateral: search.lateral_n ?? AT_REST.lateral,
    drive: search.drive_n ?? AT_REST.drive,
  };
};

/** The lines an address asks for, the sound one first, and what in it means nothing here. */
const subjectsOf = (
  family: Family,
  search: TravelSearch,
  beside: Family | null,
  tearable: readonly Position[],
  stiffenable: readonly Position[],
): Pick<TravelView, "strangers" | "leftOut"> & { readonly subjects: readonly TravelSubject[] } => {
  const subjects: TravelSubject[] = [{ kind: "sound" }];
  const strangers: string[] = [];
  const rubber = (
    id: string | undefined,
    among: readonly Position[],
    fault: Extract<TravelSubject, { kind: "rubber" }>["fault"],
  ): void => {
    if (id === undefined) return;
    if (among.some((position) => position.id === id)) subjects.push({ kind: "rubber", position: id, fault });
    else strangers.push(id);
  };
  rubber(search.torn, tearable, { kind: "torn", grade: TORN_GRADE });
  if (search.firmer === EVERY_RUBBER) subjects.push({ kind: EVERY_RUBBER, fault: firmerOf(search) });
  else rubber(search.firmer, stiffenable, firmerOf(search));
  if (search.lowered_mm !== undefined) subjects.push({ kind: "lowered", by: metresFromMm(search.lowered_mm) });
  const another = beside !== null && beside.id !== family.id ? beside : null;
  const full = subjects.length >= MOST_LINES;
  if (another !== null && !full) subjects.push({ kind: "beside", family: another });
  if (search.beside !== undefined && beside === null) strangers.push(search.beside);
  return { subjects, strangers, leftOut: full ? (another?.id ?? null) : null };
};

/** What the sheet over travel of this address shows. */
export const useTravelView = (): TravelView => {
  const { family } = familyRoute.useLoaderData();
  const { beside } = travelRoute.useLoaderData();
  const search = travelRoute.useSearch();
  const navigate = useNavigate({ from: "/families/$familyId/travel" });
  const corner = search.corner ?? "front-left";
  const axle = family[corner.startsWith("front") ? "front" : "rear"];
  const places = useMemo(() => positionsOf(family).filter((p) => cornerOf(p) === corner), [family, corner]);
  const tearable = useMemo(
    () => places.filter((p) => possibleFaultsAt(family, p).tornGrades.includes(TORN_GRADE)),
    [family, places],
  );
  const stiffenable = useMemo(() => places.filter((p) => possibleFaultsAt(family, p).firmer), [family, places]);
  const addressed = useMemo(() => conditionOnAxle(axle, usualOf(search)), [axle, search]);
  const writeCondition = useCallback(
    (condition: Condition) =>
      void navigate({ search: (last) => ({ ...last, ...searchOfCondition(condition) }), replace: true }),
    [navigate],
  );
  const [condition, setCondition] = useDragged(addressed, writeCondition);
  const [eye, setEye] = useEye(
    search,
    useCallback((place) => void navigate({ search: (last) => ({ ...last, ...place }), replace: true }), [navigate]),
  );
  const { subjects, strangers, leftOut } = useMemo(
    () => subjectsOf(family, search, beside, tearable, stiffenable),
    [family, search, beside, tearable, stiffenable],
  );
  const key = JSON.stringify([corner, search.torn, search.firmer, search.firmer_by, search.lowered_mm, search.beside]);
  const { first, second } = search;
  const figures = useMemo(() => figuresOf({ ...(first && { first }), ...(second && { second }) }), [first, second]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the lines, so that turning the view asks nothing anew
  const question = useMemo(
    (): TravelSheetQuestion => ({ family, corner, condition, subjects, figures }),
    [family, condition, figures, key, beside],
  );
  const change = useCallback(
    (changed: Partial<Record<keyof TravelSearch, string | number | undefined>>) =>
      void navigate({ search: (last) => readable({ ...last, ...changed }) }),
    [navigate],
  );
  const chooseCorner = useCallback(
    (chosen: Corner) =>
      change({
        corner: chosen,
        torn: undefined,
        ...(search.firmer === EVERY_RUBBER ? {} : { firmer: undefined, firmer_by: undefined }),
      }),
    [change, search.firmer],
  );
  return {
    family,
    corner,
    search,
    tearable,
    stiffenable,
    question,
    condition,
    eye,
    strangers,
    leftOut,
    change,
    chooseCorner,
    setCondition,
    setEye,
  };
};

/** Without the keys that were set to nothing. */
const readable = (search: Record<string, unknown>): TravelSearch =>
  Object.fromEntries(Object.entries(search).filter(([, value]) => value !== undefined)) as TravelSearch;
