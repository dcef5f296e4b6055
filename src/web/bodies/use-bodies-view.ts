import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import type { BodiesAsked, BodiesFile, Condition, RubberPlace } from "#casework";
import { type Finding, parseBodiesFile } from "#contract";
import type { EyePlace } from "#drawing";
import { conditionOf, searchOfCondition } from "../effect/condition-in-address.ts";
import { useDragged } from "../geometry/use-dragged.ts";
import type { BodiesSearch } from "./bodies-search.ts";
import { keepLayout, type LayoutFile, loadKeptLayout } from "./kept-layout.ts";

const route = getRouteApi("/layouts");
const USUAL_EYE: EyePlace = { turn: 35, tilt: 20 };
const EXAMPLE: LayoutFile = { name: "the invented example", text: EXAMPLE_LAYOUT_TEXT };

/** A place of rubber as it stands in an address. */
export const rubberKey = ({ part, end }: RubberPlace): string => (end === null ? part : `${part}.${end}`);

export interface BodiesView {
  readonly source: LayoutFile;
  /** What the file says, or everything that is wrong with it. */
  readonly read: { readonly file: BodiesFile } | { readonly findings: readonly Finding[] };
  readonly torn: RubberPlace | null;
  /** What the address names that the file does not have; null where all is there. */
  readonly stranger: string | null;
  readonly condition: Condition;
  readonly eye: EyePlace;
  /** Null where the file cannot be read. */
  readonly asked: BodiesAsked | null;
  readonly readIn: (file: File) => Promise<void>;
  readonly showExample: () => void;
  readonly chooseTorn: (key: string) => void;
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
  const torn = useMemo(
    () => file?.elasticity.rubber.find((rubber) => rubberKey(rubber) === search.torn) ?? null,
    [file, search.torn],
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
    (): BodiesAsked | null => (file === null ? null : { file, torn, condition }),
    [file, torn, condition],
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
    read,
    torn,
    stranger: search.torn !== undefined && torn === null ? search.torn : null,
    condition,
    eye,
    asked,
    readIn,
    showExample: useCallback(() => void navigate({ search: {} }), [navigate]),
    chooseTorn: useCallback(
      (key: string) => void navigate({ search: ({ torn: _, ...last }) => ({ ...last, ...(key && { torn: key }) }) }),
      [navigate],
    ),
    setCondition,
    setEye,
  };
};
