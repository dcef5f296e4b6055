import type { DocumentBodies, DocumentKind, StoredDocument } from "./cases/documents.ts";
import type { Look, StoredLook } from "./cases/look.ts";

/** What became of a document that was to be saved. */
export type SaveOutcome<K extends DocumentKind> =
  | { readonly saved: StoredDocument<K> }
  /** Somebody saved another version meanwhile: nothing was written; theirs is what stands. */
  | { readonly conflict: StoredDocument<K> };

/** What became of one look of a batch, in its order. */
export type LookOutcome =
  | { readonly stored: StoredLook }
  /** The same look had been stored before: nothing was written. */
  | { readonly known: StoredLook }
  /** Another look with this id stands on record: this one is refused, nothing is lost. */
  | { readonly clash: StoredLook };

/** Where cases are kept. Every method that returns has its write on disk; clocks and ids are passed in. */
export interface CaseStore {
  saveDocument<K extends DocumentKind>(
    kind: K,
    id: string,
    body: DocumentBodies[K],
    meta: { readonly expectedVersion: number; readonly by: string; readonly at: string },
  ): Promise<SaveOutcome<K>>;
  loadDocument<K extends DocumentKind>(kind: K, id: string): Promise<StoredDocument<K> | null>;
  /** All versions, oldest first. */
  loadHistory<K extends DocumentKind>(kind: K, id: string): Promise<readonly StoredDocument<K>[]>;
  listDocuments<K extends DocumentKind>(kind: K): Promise<readonly StoredDocument<K>[]>;
  /** Visits of a car, oldest first. */
  listVisits(car: string): Promise<readonly StoredDocument<"visit">[]>;
  appendLooks(looks: readonly Look[], receivedAt: string): Promise<readonly LookOutcome[]>;
  /** In the order they were stored. */
  loadLooks(filter: { readonly visit: string } | { readonly car: string }): Promise<readonly StoredLook[]>;
}

/** No photo larger than this is kept: larger than any of a phone or camera worth keeping here (invented bound). */
export const largestPhotoBytes = 41_943_040;
/** The bound as a type, so that a store that may not import values is held to it by the compiler. */
export type LargestPhotoBytes = typeof largestPhotoBytes;

/** Photos by the SHA-256 of their bytes. */
export interface PhotoStore {
  /** Writes the bytes whole or not at all and returns their hash; the same bytes again change nothing. */
  savePhoto(bytes: Uint8Array): Promise<string>;
  loadPhoto(hash: string): Promise<Uint8Array | null>;
}
