import { cases } from "./001-cases.ts";
import type { Migration } from "./migration.ts";

/** Every migration in its order; a new one goes to the end. */
export const migrations: readonly Migration[] = [cases];

/** Number of the schema this program knows. */
export const knownSchema = migrations.length;
