import { Outlet } from "@tanstack/react-router";
import { createContext, use, useEffect, useMemo, useState } from "react";
import type { DocumentBodies, Look } from "#casework";
import { formatBody, formatLook } from "#contract";
import { type LoadedFamily, loadFamily } from "../../server/families.ts";
import { makeLookId } from "../unsent/uuid-v7.ts";
import { outbox, useOutbox } from "../unsent/workshop-outbox.ts";
import { bodyOf, type CaseKind, type CaseRecord, readCaseRecord, versionOnRecord } from "./case-record.ts";
import type { LoadedCase } from "./load-case.ts";
import { currentRecorder, useRecorder } from "./recorder.ts";

/** A look as a page records it; id, car, visit, moment and person are added. */
export type NewLook = Pick<Look, "place" | "content"> &
  Partial<Pick<Look, "loadState" | "instrument" | "photo" | "note">>;

/** One visit with everything on record, and the ways to record more. */
export interface Case extends CaseRecord {
  /** The family of the car; null: none chosen yet, or it is still being read. */
  readonly family: LoadedFamily | null;
  /** True while the family the car names is being read. */
  readonly familyComing: boolean;
  /** Who records on this device. */
  readonly who: string;
  /**
   * Changes a document and saves it; `change` gets it as it stands (null: there is none yet).
   * It is kept in this browser at once and sent to the store.
   */
  readonly change: <K extends CaseKind>(
    kind: K,
    change: (body: DocumentBodies[K] | null) => DocumentBodies[K],
    options?: { readonly confirmed?: boolean },
  ) => void;
  /** Records looks; returns their ids in the same order. */
  readonly record: (looks: readonly NewLook[], options?: { readonly confirmed?: boolean }) => readonly string[];
}

const CaseContext = createContext<Case | null>(null);

/** The case of this address; only inside CaseHold. */
export const useCase = (): Case => {
  const held = use(CaseContext);
  if (held === null) throw new Error("useCase was called outside a case");
  return held;
};

/** The moment with the offset of this device, as records carry it. */
const formatMoment = (date: Date): string => {
  const minutes = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + minutes * 60_000).toISOString().slice(0, 19);
  const two = (value: number): string => String(Math.floor(Math.abs(value))).padStart(2, "0");
  return `${local}${minutes < 0 ? "-" : "+"}${two(minutes / 60)}:${two(minutes % 60)}`;
};

/** This moment, as records carry it. */
export const momentNow = (): string => formatMoment(new Date());

const changeDocument = <K extends CaseKind>(
  loaded: LoadedCase,
  kind: K,
  change: (body: DocumentBodies[K] | null) => DocumentBodies[K],
  confirmed: boolean,
): void => {
  const state = outbox.state();
  const body = change(bodyOf(kind, loaded, state));
  const over = versionOnRecord(kind, loaded, state);
  outbox.putDocument({
    kind,
    id: kind === "car" ? loaded.car.id : loaded.visitId,
    body: formatBody(kind, body),
    by: currentRecorder(),
    confirmed,
    over,
  });
};

/** A reading taken again answers the question whether the one before it stands: that one is withdrawn. */
const dropRefused = ({ visit, place, content }: Look): void => {
  if (content.kind !== "reading") return;
  for (const [key, entry] of outbox.state().entries) {
    if (entry.what !== "look" || entry.state.kind !== "refused") continue;
    const odd = entry.look;
    const point = typeof odd.content.point === "string" ? odd.content.point : null;
    if (
      odd.visit === visit &&
      odd.place === place &&
      odd.content.quantity === content.quantity &&
      point === content.point
    )
      outbox.drop(key);
  }
};

const recordLooks = (loaded: LoadedCase, looks: readonly NewLook[], confirmed: boolean): readonly string[] => {
  const at = momentNow();
  const made = looks.map(
    (look): Look => ({
      id: makeLookId(),
      car: loaded.car.id,
      visit: loaded.visitId,
      loadState: null,
      instrument: null,
      photo: null,
      note: null,
      ...look,
      who: currentRecorder(),
      at,
    }),
  );
  for (const look of made) dropRefused(look);
  outbox.putLooks(made.map((look) => ({ look: formatLook(look), confirmed })));
  return made.map(({ id }) => id);
};

/** The family a car names, read when it changes; what was loaded with the case stands at once. */
const useFamilyOf = (named: string | null, loaded: LoadedFamily | null) => {
  const [read, setRead] = useState<LoadedFamily | null>(loaded);
  const [tried, setTried] = useState<string | null>(loaded?.family.id ?? null);
  const missing = named !== null && read?.family.id !== named && loaded?.family.id !== named;
  useEffect(() => {
    if (!missing || named === null) return;
    let gone = false;
    void loadFamily(named).then((answer) => {
      if (gone) return;
      setTried(named);
      if (answer.kind === "answer") setRead(answer.body);
    });
    return () => {
      gone = true;
    };
  }, [missing, named]);
  const family = named === null ? null : ([loaded, read].find((one) => one?.family.id === named) ?? null);
  return { family, familyComing: missing && tried !== named };
};

interface CaseHoldProps {
  readonly loaded: LoadedCase;
}

/** Holds one visit over its pages. */
export const CaseHold = ({ loaded }: CaseHoldProps) => {
  const state = useOutbox();
  const who = useRecorder();
  const record = useMemo(() => readCaseRecord(loaded, state), [loaded, state]);
  const { family, familyComing } = useFamilyOf(record.car.family, loaded.family);
  const held = useMemo(
    (): Case => ({
      ...record,
      family,
      familyComing,
      who,
      change: (kind, change, options) => changeDocument(loaded, kind, change, options?.confirmed ?? false),
      record: (looks, options) => recordLooks(loaded, looks, options?.confirmed ?? false),
    }),
    [record, family, familyComing, who, loaded],
  );
  return (
    <CaseContext value={held}>
      <Outlet />
    </CaseContext>
  );
};
