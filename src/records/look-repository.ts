import type { Kysely } from "kysely";
import type { Look, LookOutcome, StoredLook } from "#casework";
import { lookAsSent, lookOfRow, lookRow } from "./look-row.ts";
import { attempt, inParts, type RecordDatabase } from "./record-database.ts";
import { isSameContent } from "./same-content.ts";
import type { Tables } from "./tables.ts";

/** Rows of 21 columns per statement: below the 32,766 parameters SQLite takes and the 65,535 of PostgreSQL. */
const rowsPerStatement = 500;

/** A client's clock that is off by more than this is said to be off, in milliseconds: one day. */
const clockSlackMs = 24 * 60 * 60 * 1000;

/** True where the client's clock and the server's differ by more than a day. */
const isClockOff = (look: Look, receivedAt: string): boolean =>
  !(Math.abs(Date.parse(look.at) - Date.parse(receivedAt)) <= clockSlackMs);

/** A look with everything but its number, which is given when it is written. */
export type UnnumberedLook = Omit<StoredLook, "sequence">;

/** Takes the turn at numbering looks; other writers wait until the transaction has ended. */
const lastSequence = async (step: Kysely<Tables>): Promise<number> => {
  await step
    .updateTable("counter")
    .set(({ ref }) => ({ value: ref("value") }))
    .where("name", "=", "look")
    .execute();
  const { value } = await step
    .selectFrom("counter")
    .select("value")
    .where("name", "=", "look")
    .executeTakeFirstOrThrow();
  return value;
};

const loadKnown = async (step: Kysely<Tables>, ids: readonly string[]): Promise<Map<string, StoredLook>> => {
  const known = new Map<string, StoredLook>();
  for (const part of inParts(ids, rowsPerStatement)) {
    const rows = await step.selectFrom("look").selectAll().where("id", "in", part).execute();
    for (const row of rows) known.set(row.id, lookOfRow(row));
  }
  return known;
};

/**
 * Writes those looks that are not on record yet, numbered on from the last one, and says of each what became of it.
 * To be called inside a transaction.
 */
export const writeLooks = async (
  step: Kysely<Tables>,
  looks: readonly UnnumberedLook[],
): Promise<readonly LookOutcome[]> => {
  const last = await lastSequence(step);
  const known = await loadKnown(
    step,
    looks.map(({ id }) => id),
  );
  const fresh: StoredLook[] = [];
  const outcomes = looks.map((look): LookOutcome => {
    const standing = known.get(look.id);
    if (standing !== undefined) {
      return isSameContent(lookAsSent(standing), lookAsSent(look)) ? { known: standing } : { clash: standing };
    }
    const stored: StoredLook = { ...look, sequence: last + fresh.length + 1 };
    fresh.push(stored);
    known.set(look.id, stored);
    return { stored };
  });
  for (const part of inParts(fresh, rowsPerStatement)) {
    await step.insertInto("look").values(part.map(lookRow)).execute();
  }
  if (fresh.length > 0) {
    await step
      .updateTable("counter")
      .set({ value: last + fresh.length })
      .where("name", "=", "look")
      .execute();
  }
  return outcomes;
};

/** Looks, which are only ever added. */
export class LookRepository {
  private readonly records: RecordDatabase;

  constructor(records: RecordDatabase) {
    this.records = records;
  }

  append(looks: readonly Look[], receivedAt: string): Promise<readonly LookOutcome[]> {
    const received = looks.map((look) => ({ ...look, receivedAt, clockOff: isClockOff(look, receivedAt) }));
    return attempt(this.records, () => this.records.db.transaction().execute((step) => writeLooks(step, received)));
  }

  load(filter: { readonly visit: string } | { readonly car: string }): Promise<readonly StoredLook[]> {
    return attempt(this.records, async () => {
      const all = this.records.db.selectFrom("look").selectAll();
      const some = "visit" in filter ? all.where("visit", "=", filter.visit) : all.where("car", "=", filter.car);
      return (await some.orderBy("sequence").execute()).map(lookOfRow);
    });
  }
}
