import { useRouter } from "@tanstack/react-router";
import { useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import { type Finding, readJson } from "#contract";
import type { Family } from "../car.ts";
import { saveFamily } from "../server/families.ts";
import { type EditedFamily, loadKeptSheet } from "./load-edit.ts";
import {
  beginDraft,
  changeDraft,
  type Draft,
  editDraft,
  isChanged,
  type KeptSheet,
  redoDraft,
  undoDraft,
} from "./model/draft.ts";
import { drawnFamilyOf, findingsOfSheet } from "./model/findings-of-sheet.ts";
import type { SheetPath } from "./model/sheet-path.ts";
import { textOfDraft } from "./model/sheet-text.ts";
import { dropLeftDraft, keepLeftDraft, loadLeftDraft } from "./saving/kept-draft.ts";

/** How saving stands. */
export type Saving =
  | { readonly kind: "none" | "busy" | "saved" | "silent" }
  /** Not sent: the checks still find something. */
  | { readonly kind: "wrong" }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

export interface Editing {
  readonly id: string;
  readonly draft: Draft;
  readonly sheet: unknown;
  readonly changed: boolean;
  readonly findings: readonly Finding[];
  /** The last state that could be drawn, with the sheet it was drawn from; null where there never was one. */
  readonly drawn: { readonly family: Family; readonly sheet: unknown; readonly isPresent: boolean } | null;
  /** As it is kept; null where that cannot be drawn. */
  readonly kept: Family | null;
  readonly saving: Saving;
  /** Somebody saved this since it was opened. */
  readonly latest: KeptSheet | null;
  /** False where this browser does not keep what is typed. */
  readonly isKeptHere: boolean;
  readonly edit: (path: SheetPath, value: unknown) => void;
  /** Puts a whole sheet in the place of the present one; `place` joins what is typed on in one place. */
  readonly change: (sheet: unknown, place: string | null) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly save: () => Promise<void>;
  /** Goes on from somebody else's version with what was chosen of both. */
  readonly settle: (sheet: unknown) => void;
}

interface Begun {
  readonly draft: Draft;
  readonly latest: KeptSheet | null;
}

/** The draft left in this browser, else a fresh one; a draft begun from an older version meets the latest at once. */
const begin = ({ id, kept }: EditedFamily): Begun => {
  const left = loadLeftDraft(id);
  if (left === null) return { draft: beginDraft(kept), latest: null };
  if (left.baseVersion === kept.version) return { draft: beginDraft(kept, left.sheet), latest: null };
  const reading = readJson(left.baseText);
  const base = { text: left.baseText, version: left.baseVersion, sheet: reading.readable ? reading.value : null };
  return { draft: beginDraft(base, left.sheet), latest: kept };
};

/** Typed text is kept in the browser so long after the last key at the latest, ms; leaving the page keeps it at once. */
const KEEP_MS = 300;

/** Keeps the draft in this browser while it differs from what is saved. */
const useKeptHere = (id: string, draft: Draft): boolean => {
  const [isKept, setKept] = useState(true);
  const latest = useRef(draft);
  latest.current = draft;
  useEffect(() => {
    const keep = () => {
      const { base, sheet } = latest.current;
      if (!isChanged(latest.current)) dropLeftDraft(id);
      else setKept(keepLeftDraft(id, { sheet, baseText: base.text, baseVersion: base.version }));
    };
    const timer = setTimeout(keep, KEEP_MS);
    window.addEventListener("pagehide", keep);
    return () => {
      clearTimeout(timer);
      window.removeEventListener("pagehide", keep);
      if (latest.current === draft) keep();
    };
  }, [id, draft]);
  return isKept;
};

/** The last state of a sheet whose linkages close. */
const useDrawn = (sheet: unknown): Editing["drawn"] => {
  const family = useMemo(() => drawnFamilyOf(sheet), [sheet]);
  const last = useRef<{ readonly family: Family; readonly sheet: unknown } | null>(null);
  if (family !== null && last.current?.sheet !== sheet) last.current = { family, sheet };
  return useMemo(() => (last.current === null ? null : { ...last.current, isPresent: family !== null }), [family]);
};

/** Editing one family: the draft, what the checks find, what is drawn of it, and saving it whole or not at all. */
export const useEditing = (edited: EditedFamily): Editing => {
  const { id } = edited;
  const router = useRouter();
  const [{ draft, latest }, setBegun] = useState(() => begin(edited));
  const [saving, setSaving] = useState<Saving>({ kind: "none" });
  const isKeptHere = useKeptHere(id, draft);
  const { sheet, base } = draft;
  const settled = useDeferredValue(sheet);
  const findings = useMemo(() => findingsOfSheet(settled, id), [settled, id]);
  const drawn = useDrawn(settled);
  const kept = useMemo(() => drawnFamilyOf(base.sheet), [base.sheet]);

  const change = (next: (draft: Draft) => Draft) => {
    setBegun((begun) => ({ ...begun, draft: next(begun.draft) }));
    setSaving((last) => (last.kind === "busy" ? last : { kind: "none" }));
  };

  const meetLatest = async () => {
    const answer = await loadKeptSheet(id);
    if (answer.kind !== "answer") {
      setSaving({ kind: "silent" });
      return;
    }
    setBegun((begun) => ({ ...begun, latest: answer.body }));
    setSaving({ kind: "none" });
  };

  const save = async () => {
    if (saving.kind === "busy") return;
    if (findingsOfSheet(sheet, id).length > 0) {
      setSaving({ kind: "wrong" });
      return;
    }
    setSaving({ kind: "busy" });
    const text = textOfDraft(draft);
    const outcome = await saveFamily(id, text, base.version);
    if (outcome.kind === "superseded") return meetLatest();
    if (outcome.kind !== "kept") {
      setSaving(outcome);
      return;
    }
    const saved: KeptSheet = { text, sheet, version: outcome.version };
    setBegun((begun) => ({ ...begun, draft: { ...begun.draft, base: saved } }));
    setSaving({ kind: "saved" });
    await router.invalidate();
  };

  return {
    id,
    draft,
    sheet,
    changed: isChanged(draft),
    findings,
    drawn,
    kept,
    saving,
    latest,
    isKeptHere,
    edit: (path, value) => change((last) => editDraft(last, path, value)),
    change: (next, place) => change((last) => changeDraft(last, next, place)),
    undo: () => change(undoDraft),
    redo: () => change(redoDraft),
    save,
    settle: (chosen) => {
      if (latest === null) return;
      setBegun({ draft: beginDraft(latest, chosen), latest: null });
      setSaving({ kind: "none" });
    },
  };
};
