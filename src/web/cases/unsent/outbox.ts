import type { DocumentKind } from "#casework";
import type { Finding, StoredDocumentSheet, WireBody } from "#contract";
import type { Shelf } from "./browser-shelf.ts";
import {
  documentKey,
  documentsInOrder,
  type EntryState,
  entryKey,
  looksInOrder,
  type UnsentDocument,
  type UnsentEntry,
  type UnsentLook,
  type UnsentPhoto,
} from "./entry.ts";
import type { BatchAnswer, DocumentAnswer, LookAnswer, NumberedLook, PhotoAnswer } from "./send-entries.ts";

/** What this browser knows of entries: those that wait here, and what the store has acknowledged since the page was opened. */
export interface OutboxState {
  readonly entries: ReadonlyMap<string, UnsentEntry>;
  /** By documentKey: the last version the store acknowledged or showed. */
  readonly documents: ReadonlyMap<string, StoredDocumentSheet>;
  /** By id. */
  readonly looks: ReadonlyMap<string, NumberedLook>;
  /** Why nothing is being taken: findings of the store, none where it is silent; null where all is well. */
  readonly trouble: readonly Finding[] | null;
  /** What the store said of looks it took: a clock that is off, a photo that has not come. */
  readonly remarks: readonly Finding[];
  /** False where this browser cannot keep entries beyond this page. */
  readonly keeps: boolean;
}

/** A document as somebody typed it. */
export interface TypedDocument<K extends DocumentKind = DocumentKind> {
  readonly kind: K;
  readonly id: string;
  readonly body: WireBody<K>;
  readonly by: string;
  readonly confirmed?: boolean;
  /** The version on record it was typed over; null where there was none. */
  readonly over: { readonly version: number; readonly document: WireBody<K> } | null;
}

export interface Outbox {
  readonly state: () => OutboxState;
  readonly subscribe: (changed: () => void) => () => void;
  /** Keeps a document here and sends it; typing again replaces what has not been sent. */
  readonly putDocument: <K extends DocumentKind>(typed: TypedDocument<K>) => void;
  readonly putLooks: (looks: readonly Omit<UnsentLook, "what" | "state">[]) => void;
  /** Sends a photo whose bytes are held already; `held` is false where they do not outlive this page. */
  readonly putPhoto: (photo: Pick<UnsentPhoto, "hash" | "name">, held: boolean) => void;
  /** Sends what was refused as odd once more, confirmed. */
  readonly confirm: (key: string) => void;
  /** Puts a document together from both versions, over the latest; it is sent then. */
  readonly settle: <K extends DocumentKind>(key: string, body: WireBody<K>) => void;
  /** Withdraws an entry the store has not taken. */
  readonly drop: (key: string) => void;
  /** Sends all that waits; done once everything has been answered or the store is in trouble. */
  readonly send: () => Promise<void>;
  /** Reads anew what waits in this browser: another window may have changed it. */
  readonly reload: () => void;
}

export interface OutboxParts {
  readonly shelf: Shelf;
  readonly sendDocument: (entry: UnsentDocument) => Promise<DocumentAnswer>;
  readonly sendLooks: (entries: readonly UnsentLook[]) => Promise<BatchAnswer>;
  readonly sendPhoto: (entry: UnsentPhoto) => Promise<PhotoAnswer>;
  /** Lets the bytes of a photo go that no longer waits. */
  readonly forgetPhoto: (hash: string) => void;
  /** Calls back after a pause; the pauses grow while the store stays silent. */
  readonly later: (turn: number, run: () => void) => void;
}

/** Looks in one batch; the store takes up to a thousand. */
const BATCH = 200;
const WAITING: EntryState = { kind: "waiting" };
/** What is missing may still be on its way. */
const NOT_YET: readonly string[] = ["unknown-visit", "unknown-car"];

const saysTheSame = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Entries on their way to the workshop's store: kept in the browser until the store has acknowledged each. */
export const createOutbox = (parts: OutboxParts): Outbox => {
  const { shelf, sendDocument, sendLooks, sendPhoto, forgetPhoto, later } = parts;
  let now: OutboxState = {
    entries: shelf.load(),
    documents: new Map(),
    looks: new Map(),
    trouble: null,
    remarks: [],
    keeps: true,
  };
  const listeners = new Set<() => void>();
  const set = (change: Partial<OutboxState>): void => {
    now = { ...now, ...change };
    for (const listener of listeners) listener();
  };
  const put = (entry: UnsentEntry): void => {
    const keeps = shelf.keep(entryKey(entry), entry);
    set({ entries: new Map(now.entries).set(entryKey(entry), entry), keeps: keeps && now.keeps });
  };
  const drop = (key: string): void => {
    const dropped = now.entries.get(key);
    shelf.drop(key);
    if (dropped?.what === "photo") forgetPhoto(dropped.hash);
    const entries = new Map(now.entries);
    entries.delete(key);
    set({ entries });
  };
  const acknowledge = (document: StoredDocumentSheet): void =>
    set({ documents: new Map(now.documents).set(documentKey(document.kind, document.id), document) });

  const waiting = (): readonly UnsentEntry[] =>
    [...now.entries.values()].filter(({ state }) => state.kind === "waiting");

  const takeDocumentAnswer = (sent: UnsentDocument, answer: Exclude<DocumentAnswer, { kind: "later" }>): void => {
    const key = entryKey(sent);
    const current = now.entries.get(key);
    const typedSince = current?.what === "document" && !saysTheSame(current.body, sent.body) ? current : null;
    if (answer.kind === "stored") {
      const { document } = answer;
      acknowledge(document);
      if (typedSince === null) drop(key);
      else put({ ...typedSince, version: document.version, before: document.document, state: WAITING });
      return;
    }
    if (answer.kind === "overtaken") {
      acknowledge(answer.latest);
      if (current?.what !== "document") return;
      if (saysTheSame(current.body, answer.latest.document)) drop(key);
      else put({ ...current, state: answer });
      return;
    }
    if (typedSince === null && current !== undefined && !answer.findings.some(({ code }) => NOT_YET.includes(code)))
      put({ ...current, state: { kind: "refused", findings: answer.findings } });
  };

  const takeLookAnswer = (sent: UnsentLook, answer: LookAnswer): void => {
    const key = entryKey(sent);
    if ((answer.outcome === "stored" || answer.outcome === "known") && answer.look !== undefined) {
      const looks = new Map(now.looks).set(sent.look.id, answer.look);
      set({ looks, remarks: [...now.remarks, ...(answer.remarks ?? [])] });
      drop(key);
      return;
    }
    const findings = answer.findings ?? [];
    if (now.entries.has(key) && !findings.some(({ code }) => NOT_YET.includes(code)))
      put({ ...sent, state: { kind: "refused", findings } });
  };

  /** False where the store is in trouble: the rest waits. */
  const sendAllDocuments = async (): Promise<boolean> => {
    for (const entry of documentsInOrder(waiting())) {
      const answer = await sendDocument(entry);
      if (answer.kind === "later") {
        set({ trouble: answer.findings });
        return false;
      }
      takeDocumentAnswer(entry, answer);
    }
    return true;
  };

  const sendAllLooks = async (): Promise<boolean> => {
    const looks = looksInOrder(waiting());
    for (let from = 0; from < looks.length; from += BATCH) {
      const batch = looks.slice(from, from + BATCH);
      const answer = await sendLooks(batch);
      if (answer.kind === "later") {
        set({ trouble: answer.findings });
        return false;
      }
      for (const [index, entry] of batch.entries()) {
        takeLookAnswer(
          entry,
          answer.kind === "answered"
            ? (answer.answers[index] ?? { id: entry.look.id, outcome: "refused" })
            : { id: entry.look.id, outcome: "refused", findings: answer.findings },
        );
      }
    }
    return true;
  };

  const sendAllPhotos = async (): Promise<boolean> => {
    for (const entry of waiting()) {
      if (entry.what !== "photo") continue;
      const answer = await sendPhoto(entry);
      if (answer.kind === "later") {
        set({ trouble: answer.findings });
        return false;
      }
      const key = entryKey(entry);
      if (answer.kind === "stored") drop(key);
      else if (now.entries.has(key)) put({ ...entry, state: { kind: "refused", findings: answer.findings } });
    }
    return true;
  };

  let running: Promise<void> | null = null;
  let again = false;
  let turn = 0;
  const run = async (): Promise<void> => {
    let well = true;
    do {
      again = false;
      well = (await sendAllDocuments()) && (await sendAllLooks()) && (await sendAllPhotos());
    } while (well && again);
    if (well) {
      turn = 0;
      if (now.trouble !== null) set({ trouble: null });
    }
    if (waiting().length > 0) {
      turn += 1;
      later(turn, () => void send());
    }
  };
  const send = (): Promise<void> => {
    again = true;
    running ??= Promise.resolve()
      .then(run)
      .finally(() => {
        running = null;
      });
    return running;
  };

  const putDocument = <K extends DocumentKind>(typed: TypedDocument<K>): void => {
    const key = documentKey(typed.kind, typed.id);
    const last = now.entries.get(key);
    const standing = last?.what === "document" ? last : null;
    put({
      what: "document",
      kind: typed.kind,
      id: typed.id,
      version: standing?.version ?? typed.over?.version ?? 0,
      before: standing === null ? (typed.over?.document ?? null) : standing.before,
      body: typed.body,
      by: typed.by,
      confirmed: typed.confirmed ?? false,
      state: standing?.state.kind === "overtaken" ? standing.state : WAITING,
    });
    void send();
  };

  const confirm = (key: string): void => {
    const entry = now.entries.get(key);
    if (entry === undefined || entry.what === "photo") return;
    put({ ...entry, confirmed: true, state: WAITING });
    void send();
  };

  const settle = <K extends DocumentKind>(key: string, body: WireBody<K>): void => {
    const entry = now.entries.get(key);
    if (entry?.what !== "document" || entry.state.kind !== "overtaken") return;
    const { latest } = entry.state;
    if (saysTheSame(body, latest.document)) drop(key);
    else put({ ...entry, body, version: latest.version, before: latest.document, state: WAITING });
    void send();
  };

  return {
    confirm,
    settle,
    state: () => now,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    putDocument,
    putLooks: (looks) => {
      for (const look of looks) put({ what: "look", ...look, state: WAITING });
      void send();
    },
    putPhoto: (photo, held) => {
      if (!held) set({ keeps: false });
      put({ what: "photo", ...photo, state: WAITING });
      void send();
    },
    drop,
    send,
    reload: () => set({ entries: shelf.load() }),
  };
};
