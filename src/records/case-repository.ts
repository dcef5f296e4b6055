import type {
  CaseStore,
  DocumentBodies,
  DocumentKind,
  DocumentSaveOutcome,
  Look,
  LookOutcome,
  StoredDocument,
  StoredLook,
} from "#casework";
import { DocumentRepository } from "./document-repository.ts";
import { LookRepository } from "./look-repository.ts";
import type { RecordDatabase } from "./record-database.ts";

/** Cases in a database. */
export class CaseRepository implements CaseStore {
  private readonly documents: DocumentRepository;
  private readonly looks: LookRepository;

  constructor(records: RecordDatabase) {
    this.documents = new DocumentRepository(records);
    this.looks = new LookRepository(records);
  }

  saveDocument<K extends DocumentKind>(
    kind: K,
    id: string,
    body: DocumentBodies[K],
    meta: { readonly expectedVersion: number; readonly by: string; readonly at: string },
  ): Promise<DocumentSaveOutcome<K>> {
    return this.documents.save(kind, id, body, meta);
  }

  loadDocument<K extends DocumentKind>(kind: K, id: string): Promise<StoredDocument<K> | null> {
    return this.documents.load(kind, id);
  }

  loadHistory<K extends DocumentKind>(kind: K, id: string): Promise<readonly StoredDocument<K>[]> {
    return this.documents.history(kind, id);
  }

  listDocuments<K extends DocumentKind>(kind: K): Promise<readonly StoredDocument<K>[]> {
    return this.documents.list(kind);
  }

  listVisits(car: string): Promise<readonly StoredDocument<"visit">[]> {
    return this.documents.visitsOf(car);
  }

  appendLooks(looks: readonly Look[], receivedAt: string): Promise<readonly LookOutcome[]> {
    return this.looks.append(looks, receivedAt);
  }

  loadLooks(filter: { readonly visit: string } | { readonly car: string }): Promise<readonly StoredLook[]> {
    return this.looks.load(filter);
  }
}
