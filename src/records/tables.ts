/** Which migrations a database has been through. */
export interface SchemaVersionRow {
  readonly number: number;
  readonly name: string;
}

/** Numbers that rise without a gap; the row is locked while a writer takes its numbers. */
export interface CounterRow {
  readonly name: string;
  readonly value: number;
}

/** The latest version of a document; `car` and `day` are filled for visits, so that they can be listed. */
export interface DocumentRow {
  readonly kind: string;
  readonly id: string;
  readonly version: number;
  readonly car: string | null;
  readonly day: string | null;
}

export interface DocumentVersionRow {
  readonly kind: string;
  readonly id: string;
  readonly version: number;
  /** JSON of the body. */
  readonly body: string;
  readonly saved_by: string;
  readonly saved_at: string;
  /** SHA-256 over everything above, by which a damaged row is told from a whole one. */
  readonly digest: string;
}

export interface LookRow {
  readonly sequence: number;
  readonly id: string;
  readonly car: string;
  readonly visit: string;
  readonly place: string;
  readonly kind: string;
  readonly quantity: string | null;
  readonly value_si: number | null;
  readonly u_si: number | null;
  readonly point: string | null;
  /** JSON list of sign names. */
  readonly signs: string | null;
  /** Id of the look that is taken back. */
  readonly withdrawn: string | null;
  readonly load_state: string | null;
  readonly instrument: string | null;
  readonly photo: string | null;
  readonly note: string | null;
  readonly who: string;
  readonly looked_at: string;
  readonly received_at: string;
  /** 0 or 1: not every database has truth values. */
  readonly clock_off: number;
  /** SHA-256 over everything above but the sequence, by which a damaged row is told from a whole one. */
  readonly digest: string;
}

/** The tables as they stand after the last migration. Types and statements are those SQLite and PostgreSQL both take. */
export interface Tables {
  readonly schema_version: SchemaVersionRow;
  readonly counter: CounterRow;
  readonly document: DocumentRow;
  readonly document_version: DocumentVersionRow;
  readonly look: LookRow;
}
