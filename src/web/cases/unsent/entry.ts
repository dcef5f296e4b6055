import type { DocumentKind } from "#casework";
import type { Finding, LookSheet, StoredDocumentSheet, WireBody } from "#contract";

/** How the workshop's store took an entry, as far as it has answered. */
export type EntryState =
  | { readonly kind: "waiting" }
  /** It was not taken as it stands; it stays here until somebody changes, confirms or withdraws it. */
  | { readonly kind: "refused"; readonly findings: readonly Finding[] }
  /** Somebody saved another version meanwhile. */
  | { readonly kind: "overtaken"; readonly latest: StoredDocumentSheet };

/** A document as it was typed here and is not yet in the store. */
export interface UnsentDocument<K extends DocumentKind = DocumentKind> {
  readonly what: "document";
  readonly kind: K;
  readonly id: string;
  /** The version it was changed from; 0: a new one. */
  readonly version: number;
  /** What that version said; null for a new one. */
  readonly before: WireBody<K> | null;
  readonly body: WireBody<K>;
  readonly by: string;
  readonly confirmed: boolean;
  readonly state: EntryState;
}

/** A look that is not yet in the store. */
export interface UnsentLook {
  readonly what: "look";
  readonly look: LookSheet;
  readonly confirmed: boolean;
  readonly state: EntryState;
}

/** A photo that is not yet in the store; its bytes wait beside it, under its hash. */
export interface UnsentPhoto {
  readonly what: "photo";
  /** SHA-256 of its bytes, the name the store gives it. */
  readonly hash: string;
  /** What its file is called. */
  readonly name: string;
  readonly state: EntryState;
}

export type UnsentEntry = UnsentDocument | UnsentLook | UnsentPhoto;

/** Key of an entry: a document has one entry, every look and every photo its own. */
export const entryKey = (entry: UnsentEntry): string => {
  if (entry.what === "document") return documentKey(entry.kind, entry.id);
  return entry.what === "look" ? `look.${entry.look.id}` : photoKey(entry.hash);
};

export const photoKey = (hash: string): string => `photo.${hash}`;

export const documentKey = (kind: DocumentKind, id: string): string => `document.${kind}.${id}`;

/** A document can only stand when what it belongs to stands: a car before its visits, a visit before the rest. */
const RANK: Readonly<Record<DocumentKind, number>> = {
  settings: 0,
  "car-line": 0,
  car: 0,
  visit: 1,
  enquiry: 2,
  plan: 2,
  "job-card": 2,
  "hand-over": 2,
};

/** Documents of a list in the order they can be sent. */
export const documentsInOrder = (entries: readonly UnsentEntry[]): readonly UnsentDocument[] =>
  entries.filter((entry) => entry.what === "document").toSorted((one, other) => RANK[one.kind] - RANK[other.kind]);

/** Looks of a list in the order they were made. */
export const looksInOrder = (entries: readonly UnsentEntry[]): readonly UnsentLook[] =>
  entries.filter((entry) => entry.what === "look").toSorted((one, other) => (one.look.id < other.look.id ? -1 : 1));

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const isEntry = (value: unknown): value is UnsentEntry =>
  isObject(value) &&
  isObject(value.state) &&
  ((value.what === "document" && typeof value.id === "string" && isObject(value.body)) ||
    (value.what === "look" && isObject(value.look) && typeof value.look.id === "string") ||
    (value.what === "photo" && typeof value.hash === "string" && typeof value.name === "string"));

/** An entry read back from its text; null where the text holds none. */
export const parseEntry = (text: string): UnsentEntry | null => {
  try {
    const value: unknown = JSON.parse(text);
    return isEntry(value) ? value : null;
  } catch (cause) {
    if (cause instanceof SyntaxError) return null;
    throw cause;
  }
};
