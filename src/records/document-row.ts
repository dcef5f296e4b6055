import type { DocumentKind, StoredDocument, VisitDocument } from "#casework";
import { digestOf } from "./row-digest.ts";
import type { DocumentRow, DocumentVersionRow } from "./tables.ts";

const documentDigest = (row: Omit<DocumentVersionRow, "digest">): string =>
  digestOf([row.kind, row.id, row.version, row.body, row.saved_by, row.saved_at]);

/** One version of a document as a row. */
export const documentVersionRow = (document: StoredDocument): DocumentVersionRow => {
  const row = {
    kind: document.kind,
    id: document.id,
    version: document.version,
    body: JSON.stringify(document.body),
    saved_by: document.by,
    saved_at: document.at,
  };
  return { ...row, digest: documentDigest(row) };
};

/** True where a row is, to the last letter, what was written. */
export const isWholeDocumentRow = (row: DocumentVersionRow): boolean => row.digest === documentDigest(row);

/** The document a row holds; the kind asked for is the kind that comes. */
export const documentOfRow = <K extends DocumentKind>(row: DocumentVersionRow): StoredDocument<K> => ({
  kind: row.kind as K,
  id: row.id,
  version: row.version,
  body: JSON.parse(row.body) as StoredDocument<K>["body"],
  by: row.saved_by,
  at: row.saved_at,
});

const isVisit = (document: StoredDocument): document is StoredDocument<"visit"> => document.kind === "visit";

/** The row that says which version of a document is the latest. */
export const documentHeadRow = (document: StoredDocument): DocumentRow => {
  const visit: VisitDocument | null = isVisit(document) ? document.body : null;
  return {
    kind: document.kind,
    id: document.id,
    version: document.version,
    car: visit?.car ?? null,
    day: visit?.date ?? null,
  };
};
