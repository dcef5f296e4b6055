import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import type { BodiesAsked, BodiesFault, BodiesFile, Condition } from "#casework";
import { type Finding, parseBodiesFile } from "#contract";
import type { EyePlace } from "#drawing";
import { conditionOf, searchOfCondition } from "../effect/condition-in-address.ts";
import { useDragged } from "../geometry/use-dragged.ts";
import type { BodiesSearch } from "./bodies-search.ts";
import { keepLayout, type LayoutFile, loadKeptLayout } from "./kept-layout.ts";
import { faultOf, type LookedAtPlace, placesOf } from "./looked-at.ts";

const route = getRouteApi("/layouts");
const USUAL_EYE: EyePlace = { turn: 35, tilt: 20 };
const EXAMPLE: LayoutFile = { name: "the invented example", text: EXAMPLE_LAYOUT_TEXT };

/** Parts of the address that change; undefined takes one out. */
type Change = { readonly [Key in keyof BodiesSearch]: BodiesSearch[Key] | undefined };

export interface BodiesView {
  readonly source: LayoutFile;
  /** Text of the invented example. */
  readonly example: string;
  /** What the file says, or everything that is wrong with it. */
  readonly read: { readonly file: BodiesFile } | { readonly findings: readonly Finding[] };
  readonly search: BodiesSearch;
  /** The place that is looked at, and as what; null: none. */
  readonly place: LookedAtPlace | null;
  readonly fault: BodiesFault | null;
  /** What the address names that the file does not have; null where all is there. */
  readonly stranger: string | null;
  readonly condition: Condition;
  readonly eye: EyePlace;
  /** Null where the file cannot be read. */
  readonly asked: BodiesAsked | null;
  readonly readIn: (file: File) => Promise<void>;
  readonly showExample: () => void;
  /** What changes stands in the address; Back undoes it. */
  readonly change: (change: Change) => void;
  readonly setCondition: (condition: Condition) => void;
  readonly setEye: (eye: EyePlace) => void;
}

/** What the page of a layout from a file shows; what is moved goes into the address once it rests. */
export const useBodiesView = (): BodiesView => {
  const search = route.useSearch();
  const navigate = useNavigate({ from: "/layouts" });
  const [own, setOwn] = useState(loadKeptLayout);
  const source = search.own === true && own !== null ? own : EXAMPLE;
  const read = useMemo(() => {
    const parsed = parseBodiesFile(source.text);
    return "findings" in parsed ? parsed : { file: parsed.value };
  }, [source]);
  const file = "file" in read ? read.file : null;
  const place = useMemo(
    () => (file === null ? null : (placesOf(file).find(({ key }) => key === search.at) ?? null)),
    [file, search.at],
  );
  const { as, play_mm, factor_low, factor_high, by, old_shore_a, new_shore_a } = search;
  const fault = useMemo(
    () =>
      place &&
      faultOf(place, {
        ...(as === undefined ? {} : { as }),
        ...(play_mm === undefined ? {} : { play_mm }),
        ...(factor_low === undefined ? {} : { factor_low }),
        ...(factor_high === undefined ? {} : { factor_high }),
        ...(by === undefined ? {} : { by }),
        ...(old_shore_a === undefined ? {} : { old_shore_a }),
        ...(new_shore_a === undefined ? {} : { new_shore_a }),
      }),
    [place, as, play_mm, factor_low, factor_high, by, old_shore_a, new_shore_a],
  );
  const write = useCallback(
    (change: BodiesSearch) => void navigate({ search: (last) => ({ ...last, ...change }), replace: true }),
    [navigate],
  );
  const addressed = useMemo(() => conditionOf(search), [search]);
  const writeCondition = useCallback((condition: Condition) => write(searchOfCondition(condition)), [write]);
  const [condition, setCondition] = useDragged(addressed, writeCondition);
  const seenFrom = useMemo(
    (): EyePlace => ({ turn: search.turn_deg ?? USUAL_EYE.turn, tilt: search.tilt_deg ?? USUAL_EYE.tilt }),
    [search.turn_deg, search.tilt_deg],
  );
  const writeEye = useCallback(({ turn, tilt }: EyePlace) => write({ turn_deg: turn, tilt_deg: tilt }), [write]);
  const [eye, setEye] = useDragged(seenFrom, writeEye);
  const asked = useMemo(
    (): BodiesAsked | null => (file === null ? null : { file, fault, condition }),
    [file, fault, condition],
  );
  const readIn = useCallback(
    async (chosen: File) => {
      const kept = { name: chosen.name, text: await chosen.text() };
      keepLayout(kept);
      setOwn(kept);
      await navigate({ search: { own: true } });
    },
    [navigate],
  );
  return {
    source,
    example: EXAMPLE.text,
    read,
    search,
    place,
    fault,
    stranger: search.at !== undefined && place === null ? search.at : null,
    condition,
    eye,
    asked,
    readIn,
    showExample: useCallback(() => void navigate({ search: {} }), [navigate]),
    change: useCallback(
      (change: Change) =>
        void navigate({
          search: (last) =>
            Object.fromEntries(Object.entries({ ...last, ...change }).filter(([, value]) => value !== undefined)),
        }),
      [navigate],
    ),
    setCondition,
    setEye,
  };
};
