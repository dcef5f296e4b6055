import { z } from "zod";
import type { DocumentBodies, DocumentKind, StoredDocument } from "#casework";
import type { Finding } from "#numeric";
import { findNearest } from "../edit-distance.ts";
import { readJson } from "../read-json.ts";
import { type Parsed, parseReading } from "../refusal.ts";
import { moment, person, recordId } from "./case-words.ts";
import { formatBody, readBody } from "./document-form.ts";
import { bodySchema, documentBodies, documentKinds, type WireBody } from "./document-schemas.ts";

/** A document as somebody sends it to be saved. */
export interface SentDocument<K extends DocumentKind = DocumentKind> {
  readonly by: string;
  readonly body: DocumentBodies[K];
  /** True where the sender has been told what looks odd and stands by it. */
  readonly confirmed: boolean;
}

/** A stored document as it stands in JSON. */
export interface StoredDocumentSheet<K extends DocumentKind = DocumentKind> {
  readonly kind: K;
  readonly id: string;
  readonly version: number;
  readonly by: string;
  readonly at: string;
  readonly document: WireBody<K>;
}

/** True for the name of a kind of document. */
export const isDocumentKind = (name: string): name is DocumentKind => Object.hasOwn(documentBodies, name);

/** Said of a kind of document nobody knows. */
export const unknownKindFinding = (name: string): Finding => {
  const nearest = findNearest(name, documentKinds);
  return {
    code: "unknown-document-kind",
    path: "kind",
    got: name.slice(0, 80),
    needed: `one of: ${documentKinds.join(", ")}`,
    hint: nearest === null ? "" : `The nearest is ${nearest}.`,
  };
};

/** The one id settings are kept under. */
export const settingsId = "shop";

/** Everything that keeps an address from being one of this kind of document. */
export const checkDocumentId = (kind: DocumentKind, id: string): readonly Finding[] => {
  const fits = kind === "settings" ? id === settingsId : recordId.safeParse(id).success;
  if (fits) return [];
  const needed =
    kind === "settings" ? settingsId : "lower-case words, digits and hyphens, at most 64 letters, such as car-0007";
  return [{ code: "wrong-format", path: "id", got: id.slice(0, 80), needed, hint: "" }];
};

const sentSchema = <K extends DocumentKind>(kind: K) =>
  z.strictObject({ by: person, document: bodySchema(kind), confirmed: z.boolean().default(false) });

/** Reads a document of a kind from the JSON text somebody sent; every finding at once. */
export const parseSentDocument = <K extends DocumentKind>(kind: K, text: string): Parsed<SentDocument<K>> => {
  const parsed = parseReading(sentSchema(kind), readJson(text));
  if ("findings" in parsed) return parsed;
  const { by, document, confirmed } = parsed.value;
  return { value: { by, body: readBody(kind, document), confirmed } };
};

/** A stored document as JSON. */
export const formatStoredDocument = <K extends DocumentKind>(stored: StoredDocument<K>): StoredDocumentSheet<K> => ({
  kind: stored.kind,
  id: stored.id,
  version: stored.version,
  by: stored.by,
  at: stored.at,
  document: formatBody(stored.kind, stored.body),
});

/** A stored document of one kind in JSON. */
export const storedSchema = <K extends DocumentKind>(kind: K) =>
  z.strictObject({
    kind: z.literal(kind),
    id: kind === "settings" ? z.literal(settingsId) : recordId,
    version: z.number().int().min(1).max(1_000_000),
    by: person,
    at: moment,
    document: bodySchema(kind),
  });

/** A stored document from the JSON its schema has accepted. */
export const readStoredDocument = <K extends DocumentKind>(
  kind: K,
  wire: z.output<ReturnType<typeof storedSchema<K>>>,
): StoredDocument<K> => ({
  kind,
  id: wire.id,
  version: wire.version,
  by: wire.by,
  at: wire.at,
  body: readBody(kind, wire.document),
});
