import { type DocumentBodies, type DocumentKind, looksBefore, type StoredLook } from "#casework";
import { checkReading, readBody, type StoredDocumentSheet, type WireBody } from "#contract";
import { documentKey, looksInOrder, type UnsentDocument, type UnsentLook } from "../unsent/entry.ts";
import type { OutboxState } from "../unsent/outbox.ts";
import type { NumberedLook } from "../unsent/send-entries.ts";
import { type LoadedCase, readNumberedLook, type StoredVisit } from "./load-case.ts";

/** Kinds of documents a case is made of. */
export type CaseKind = Exclude<DocumentKind, "settings" | "car-line">;

/** Everything on record for one visit, with what was typed here laid over it. */
export interface CaseRecord {
  readonly carId: string;
  readonly visitId: string;
  readonly car: DocumentBodies["car"];
  readonly visit: DocumentBodies["visit"];
  readonly enquiry: DocumentBodies["enquiry"] | null;
  readonly plan: DocumentBodies["plan"] | null;
  readonly jobCard: DocumentBodies["job-card"] | null;
  readonly handOver: DocumentBodies["hand-over"] | null;
  readonly settings: DocumentBodies["settings"] | null;
  /** Who saved the settings that stand, and when; null where nobody has. */
  readonly settingsSaved: { readonly by: string; readonly at: string } | null;
  /**
   * Looks of this visit in the order they were stored; those on their way to the store last, refused and doubted ones left
   * out.
   */
  readonly looks: readonly StoredLook[];
  /** The visit before this one. */
  readonly pastVisit: DocumentBodies["visit"] | null;
  /** Looks of all visits before this one, in the order they were stored; heights that had not settled are left out. */
  readonly past: readonly StoredLook[];
}

interface Version<K extends DocumentKind> {
  readonly version: number;
  readonly by: string;
  readonly at: string;
  readonly document: WireBody<K>;
}

const idOf = (kind: DocumentKind, loaded: LoadedCase): string =>
  kind === "car" ? loaded.car.id : kind === "settings" ? "shop" : loaded.visitId;

const visitOf = (loaded: LoadedCase): StoredVisit | undefined =>
  loaded.visits.find(({ visit }) => visit.id === loaded.visitId);

const loadedDocument = (kind: DocumentKind, loaded: LoadedCase): StoredDocumentSheet | null => {
  const own = visitOf(loaded);
  switch (kind) {
    case "car":
      return loaded.car;
    case "settings":
      return loaded.settings;
    case "visit":
      return own?.visit ?? null;
    case "enquiry":
      return own?.enquiry ?? null;
    case "plan":
      return own?.plan ?? null;
    case "job-card":
      return own?.job_card ?? null;
    case "hand-over":
      return own?.hand_over ?? null;
    case "car-line":
      return null;
  }
};

/** The version of a document that stands on record, as far as this page knows: as loaded or as acknowledged since. */
export const versionOnRecord = <K extends DocumentKind>(
  kind: K,
  loaded: LoadedCase,
  { documents }: OutboxState,
): Version<K> | null => {
  const acknowledged = documents.get(documentKey(kind, idOf(kind, loaded))) ?? null;
  const first = loadedDocument(kind, loaded);
  const later = (acknowledged?.version ?? 0) >= (first?.version ?? 0) ? acknowledged : first;
  return (later ?? first) as Version<K> | null;
};

const unsentDocument = (kind: DocumentKind, loaded: LoadedCase, { entries }: OutboxState): UnsentDocument | null => {
  const entry = entries.get(documentKey(kind, idOf(kind, loaded)));
  return entry?.what === "document" ? entry : null;
};

/** A document as the person sees it: what was typed here, else what is on record; null where there is neither. */
export const bodyOf = <K extends DocumentKind>(
  kind: K,
  loaded: LoadedCase,
  state: OutboxState,
): DocumentBodies[K] | null => {
  const wire = (unsentDocument(kind, loaded, state)?.body ?? versionOnRecord(kind, loaded, state)?.document) as
    | WireBody<K>
    | undefined;
  return wire === undefined ? null : readBody(kind, wire);
};

/** True for a reading outside what any car shows that nobody has said stands: it counts once the store has taken it. */
export const isDoubted = ({ look, confirmed }: UnsentLook): boolean => {
  const read = readNumberedLook({ ...look, sequence: 0, received_at: look.at, clock_off: false });
  return !confirmed && read !== null && checkReading(read.content).length > 0;
};

/** Unsent looks have no number yet; they follow all that have one, in the order they were made. */
const numberUnsent = (unsent: readonly UnsentLook[]): readonly NumberedLook[] =>
  unsent.map(({ look }, index) => ({
    ...look,
    sequence: Number.MAX_SAFE_INTEGER - unsent.length + index,
    received_at: look.at,
    clock_off: false,
  }));

const looksOf = (visits: readonly string[], loaded: LoadedCase, state: OutboxState): readonly StoredLook[] => {
  const stored = new Map(loaded.looks.map((look) => [look.id, look]));
  for (const [id, look] of state.looks) stored.set(id, look);
  const unsent = looksInOrder([...state.entries.values()]).filter(
    (entry) => entry.state.kind === "waiting" && !stored.has(entry.look.id) && !isDoubted(entry),
  );
  return [...stored.values(), ...numberUnsent(unsent)]
    .filter((look) => visits.includes(look.visit))
    .toSorted((one, other) => one.sequence - other.sequence)
    .flatMap((look) => readNumberedLook(look) ?? []);
};

/** Visits before this one, oldest first. */
const visitsBefore = (loaded: LoadedCase): readonly StoredVisit[] =>
  loaded.visits.slice(
    0,
    loaded.visits.findIndex(({ visit }) => visit.id === loaded.visitId),
  );

/** Lays what was typed here over what is on record. */
export const readCaseRecord = (loaded: LoadedCase, state: OutboxState): CaseRecord => {
  const car = bodyOf("car", loaded, state);
  const visit = bodyOf("visit", loaded, state);
  if (car === null || visit === null) throw new RangeError(`visit ${loaded.visitId} was loaded without its car`);
  const before = visitsBefore(loaded);
  const last = before.at(-1);
  return {
    carId: loaded.car.id,
    visitId: loaded.visitId,
    car,
    visit,
    enquiry: bodyOf("enquiry", loaded, state),
    plan: bodyOf("plan", loaded, state),
    jobCard: bodyOf("job-card", loaded, state),
    handOver: bodyOf("hand-over", loaded, state),
    settings: bodyOf("settings", loaded, state),
    settingsSaved: versionOnRecord("settings", loaded, state),
    looks: looksOf([loaded.visitId], loaded, state),
    pastVisit: last === undefined ? null : readBody("visit", last.visit.document),
    past: looksBefore(
      looksOf(
        before.map(({ visit: { id } }) => id),
        loaded,
        state,
      ),
      before.map(({ visit: { id, document } }) => ({ id, body: readBody("visit", document) })),
    ),
  };
};
