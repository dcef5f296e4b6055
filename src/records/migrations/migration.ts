import type { Kysely } from "kysely";
import type { Tables } from "../tables.ts";

/** One step of the schema. A migration only ever adds tables, columns and indexes, and is never changed once released. */
export interface Migration {
  /** 1, 2, 3 without a gap. */
  readonly number: number;
  readonly name: string;
  readonly add: (db: Kysely<Tables>) => Promise<void>;
}
