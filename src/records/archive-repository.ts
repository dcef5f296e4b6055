import type { Kysely } from "kysely";
import type { DocumentKind, StoredDocument, StoredLook } from "#casework";
import { loadLatest, lockDocument, writeNextVersion } from "./document-repository.ts";
import { documentOfRow } from "./document-row.ts";
import { type UnnumberedLook, writeLooks } from "./look-repository.ts";
import { lookOfRow } from "./look-row.ts";
import { attempt, inParts, type RecordDatabase } from "./record-database.ts";
import { isSameContent } from "./same-content.ts";
import type { Tables } from "./tables.ts";

/** How many rows are held in memory at once. */
const rowsAtOnce = 1000;

/** Takes what stands in the records, one by one and in the order in which it can be put into other records. */
export interface ArchiveReader {
  readonly document: (document: StoredDocument) => Promise<void>;
  readonly look: (look: StoredLook) => Promise<void>;
}

/** How much stands in the records. */
export interface ArchiveCounts {
  readonly documents: number;
  readonly looks: number;
}

/** What is to be put into records: whole histories of documents, looks in their order. */
export interface ArchiveContent {
  readonly documents: readonly StoredDocument[];
  readonly looks: readonly UnnumberedLook[];
}

/** Something that stands otherwise in these records than in what is to be put in. */
export interface ArchiveClash {
  readonly what: DocumentKind | "look";
  readonly id: string;
  /** Of a document. */
  readonly version: number | null;
}

/** What became of what was put in: all of it is there now, or nothing was written. */
export type ArchiveOutcome =
  | { readonly added: ArchiveCounts; readonly known: ArchiveCounts }
  | { readonly clashes: readonly ArchiveClash[] };

/** Ends a transaction without keeping what was written in it. */
class TakenBack extends Error {
  readonly outcome: ArchiveOutcome;

  constructor(outcome: ArchiveOutcome) {
    super("taken back");
    this.outcome = outcome;
  }
}

const readDocuments = async (step: Kysely<Tables>, read: ArchiveReader): Promise<void> => {
  const heads = await step.selectFrom("document").select(["kind", "id"]).orderBy("kind").orderBy("id").execute();
  for (const { kind, id } of heads) {
    const rows = await step
      .selectFrom("document_version")
      .selectAll()
      .where("kind", "=", kind)
      .where("id", "=", id)
      .orderBy("version")
      .execute();
    for (const row of rows) await read.document(documentOfRow(row));
  }
};

const readLooks = async (step: Kysely<Tables>, read: ArchiveReader): Promise<void> => {
  for (let last = 0; ; ) {
    const rows = await step
      .selectFrom("look")
      .selectAll()
      .where("sequence", ">", last)
      .orderBy("sequence")
      .limit(rowsAtOnce)
      .execute();
    for (const row of rows) await read.look(lookOfRow(row));
    const final = rows.at(-1);
    if (final === undefined) return;
    last = final.sequence;
  }
};

const count = async (step: Kysely<Tables>, table: "document_version" | "look"): Promise<number> => {
  const row = await step
    .selectFrom(table)
    .select(({ fn }) => fn.countAll().as("count"))
    .executeTakeFirstOrThrow();
  return Number(row.count);
};

const isSameVersion = (one: StoredDocument, other: StoredDocument): boolean => isSameContent(one, other);

/** Adds one version: "added", "known", or "clash" where another one stands in its place or one before it is missing. */
const addVersion = async (step: Kysely<Tables>, document: StoredDocument): Promise<"added" | "known" | "clash"> => {
  const { kind, id, version } = document;
  await lockDocument(step, kind, id);
  const latest = (await loadLatest(step, kind, id))?.version ?? 0;
  if (version === latest + 1) return (await writeNextVersion(step, document)) ? "added" : "clash";
  const row = await step
    .selectFrom("document_version")
    .selectAll()
    .where("kind", "=", kind)
    .where("id", "=", id)
    .where("version", "=", version)
    .executeTakeFirst();
  return row !== undefined && isSameVersion(documentOfRow(row), document) ? "known" : "clash";
};

const addAll = async (step: Kysely<Tables>, { documents, looks }: ArchiveContent): Promise<ArchiveOutcome> => {
  const clashes: ArchiveClash[] = [];
  const counts = { added: { documents: 0, looks: 0 }, known: { documents: 0, looks: 0 } };
  for (const document of documents) {
    const came = await addVersion(step, document);
    if (came === "clash") clashes.push({ what: document.kind, id: document.id, version: document.version });
    else counts[came].documents++;
  }
  for (const part of inParts(looks, rowsAtOnce)) {
    for (const outcome of await writeLooks(step, part)) {
      if ("clash" in outcome) clashes.push({ what: "look", id: outcome.clash.id, version: null });
      else counts["stored" in outcome ? "added" : "known"].looks++;
    }
  }
  return clashes.length > 0 ? { clashes } : counts;
};

/** Reads records out whole and puts them in whole. */
export class ArchiveRepository {
  private readonly records: RecordDatabase;

  constructor(records: RecordDatabase) {
    this.records = records;
  }

  /** Reads everything as it stands at one moment, whatever is written meanwhile: documents by kind, id and version, then looks. */
  readAll(read: ArchiveReader): Promise<void> {
    return attempt(this.records, () =>
      this.records.db
        .transaction()
        .setAccessMode("read only")
        .setIsolationLevel("repeatable read")
        .execute(async (step) => {
          await readDocuments(step, read);
          await readLooks(step, read);
        }),
    );
  }

  counts(): Promise<ArchiveCounts> {
    return attempt(this.records, async () => ({
      documents: await count(this.records.db, "document_version"),
      looks: await count(this.records.db, "look"),
    }));
  }

  /** Puts everything in, or nothing where anything of it stands otherwise here; what is here already changes nothing. */
  putAll(content: ArchiveContent): Promise<ArchiveOutcome> {
    return this.tryAll(content, true);
  }

  /** Says what putAll would come to, and writes nothing. */
  foresee(content: ArchiveContent): Promise<ArchiveOutcome> {
    return this.tryAll(content, false);
  }

  private tryAll(content: ArchiveContent, keep: boolean): Promise<ArchiveOutcome> {
    return attempt(this.records, async () => {
      try {
        return await this.records.db.transaction().execute(async (step) => {
          const outcome = await addAll(step, content);
          if (!keep || "clashes" in outcome) throw new TakenBack(outcome);
          return outcome;
        });
      } catch (problem) {
        if (problem instanceof TakenBack) return problem.outcome;
        throw problem;
      }
    });
  }
}
