/** A family document as it is kept: the JSON text, and the version that tells it from any other text. */
export interface KeptFamily {
  readonly id: string;
  readonly text: string;
  readonly version: string;
}

/** How a save ended: kept, or held up by a document the writer had not seen (null: it has gone or was never there). */
export type SaveOutcome =
  | { readonly kind: "kept"; readonly version: string }
  | { readonly kind: "superseded"; readonly current: KeptFamily | null };

/** Where family documents live. Ids are lower-case words, digits and hyphens; other ids are a fault of the caller. */
export interface FamilyStore {
  /** All families, in the order of their ids. */
  list(): Promise<readonly KeptFamily[]>;
  /** The family with this id, or null. */
  load(id: string): Promise<KeptFamily | null>;
  /**
   * Keeps a whole document; once it has answered "kept", the document outlives a killed process.
   * `seen` is the version the writer began from, null for a family that must not exist yet. Sending again what is
   * already kept is answered "kept".
   */
  save(id: string, text: string, seen: string | null): Promise<SaveOutcome>;
}
