import type { Kysely } from "kysely";
import type { DocumentBodies, DocumentKind, DocumentSaveOutcome, StoredDocument } from "#casework";
import { documentHeadRow, documentOfRow, documentVersionRow } from "./document-row.ts";
import { attempt, type RecordDatabase } from "./record-database.ts";
import { isSameContent } from "./same-content.ts";
import type { Tables } from "./tables.ts";

const latestRows = (db: Kysely<Tables>) =>
  db
    .selectFrom("document")
    .innerJoin("document_version", (join) =>
      join
        .onRef("document_version.kind", "=", "document.kind")
        .onRef("document_version.id", "=", "document.id")
        .onRef("document_version.version", "=", "document.version"),
    )
    .selectAll("document_version");

/** Keeps other writers of this document waiting until the transaction has ended. */
export const lockDocument = async (step: Kysely<Tables>, kind: string, id: string): Promise<void> => {
  await step
    .updateTable("document")
    .set(({ ref }) => ({ version: ref("version") }))
    .where("kind", "=", kind)
    .where("id", "=", id)
    .execute();
};

/**
 * Writes the version that follows the latest one and makes it the latest; the document is locked by the caller.
 * @returns false where it was to be the first version and somebody else has written one meanwhile.
 */
export const writeNextVersion = async (step: Kysely<Tables>, document: StoredDocument): Promise<boolean> => {
  const head = documentHeadRow(document);
  if (document.version === 1) {
    const { numInsertedOrUpdatedRows } = await step
      .insertInto("document")
      .values(head)
      .onConflict((conflict) => conflict.columns(["kind", "id"]).doNothing())
      .executeTakeFirstOrThrow();
    if (numInsertedOrUpdatedRows === 0n) return false;
  } else {
    await step
      .updateTable("document")
      .set({ version: head.version, car: head.car, day: head.day })
      .where("kind", "=", head.kind)
      .where("id", "=", head.id)
      .execute();
  }
  await step.insertInto("document_version").values(documentVersionRow(document)).execute();
  return true;
};

/** The latest version of a document, or null. */
export const loadLatest = async <K extends DocumentKind>(
  db: Kysely<Tables>,
  kind: K,
  id: string,
): Promise<StoredDocument<K> | null> => {
  const row = await latestRows(db).where("document.kind", "=", kind).where("document.id", "=", id).executeTakeFirst();
  return row === undefined ? null : documentOfRow<K>(row);
};

/** Documents with all their versions. */
export class DocumentRepository {
  private readonly records: RecordDatabase;

  constructor(records: RecordDatabase) {
    this.records = records;
  }

  save<K extends DocumentKind>(
    kind: K,
    id: string,
    body: DocumentBodies[K],
    meta: { readonly expectedVersion: number; readonly by: string; readonly at: string },
  ): Promise<DocumentSaveOutcome<K>> {
    return attempt(this.records, () =>
      this.records.db.transaction().execute(async (step) => {
        await lockDocument(step, kind, id);
        const latest = await loadLatest(step, kind, id);
        if (latest !== null && isSameContent(latest.body, body)) return { saved: latest };
        if (latest !== null && latest.version !== meta.expectedVersion) return { conflict: latest };
        if (latest === null && meta.expectedVersion !== 0) throw new Error(`There is no ${kind} ${id} to follow.`);
        const next: StoredDocument<K> = { kind, id, version: meta.expectedVersion + 1, body, by: meta.by, at: meta.at };
        if (await writeNextVersion(step, next)) return { saved: next };
        const theirs = await loadLatest(step, kind, id);
        if (theirs === null) throw new Error(`${kind} ${id} was written by somebody and is not there.`);
        return { conflict: theirs };
      }),
    );
  }

  load<K extends DocumentKind>(kind: K, id: string): Promise<StoredDocument<K> | null> {
    return attempt(this.records, () => loadLatest(this.records.db, kind, id));
  }

  history<K extends DocumentKind>(kind: K, id: string): Promise<readonly StoredDocument<K>[]> {
    return attempt(this.records, async () => {
      const rows = await this.records.db
        .selectFrom("document_version")
        .selectAll()
        .where("kind", "=", kind)
        .where("id", "=", id)
        .orderBy("version")
        .execute();
      return rows.map((row) => documentOfRow<K>(row));
    });
  }

  list<K extends DocumentKind>(kind: K): Promise<readonly StoredDocument<K>[]> {
    return attempt(this.records, async () => {
      const rows = await latestRows(this.records.db).where("document.kind", "=", kind).orderBy("document.id").execute();
      return rows.map((row) => documentOfRow<K>(row));
    });
  }

  visitsOf(car: string): Promise<readonly StoredDocument<"visit">[]> {
    return attempt(this.records, async () => {
      const rows = await latestRows(this.records.db)
        .where("document.kind", "=", "visit")
        .where("document.car", "=", car)
        .orderBy("document.day")
        .orderBy("document.id")
        .execute();
      return rows.map((row) => documentOfRow<"visit">(row));
    });
  }
}
