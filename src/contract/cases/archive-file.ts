import { z } from "zod";
import type { DocumentKind, StoredDocument, StoredLook } from "#casework";
import type { Finding } from "#numeric";
import { hyphenName } from "../family/figure-schema.ts";
import { readJson } from "../read-json.ts";
import { type Parsed, parseReading } from "../refusal.ts";
import { moment, photoHash } from "./case-words.ts";
import { documentKinds } from "./document-schemas.ts";
import { formatStoredDocument, isDocumentKind, readStoredDocument, storedSchema } from "./document-sheet.ts";
import { formatStoredLook, readLook } from "./look-form.ts";
import { storedLook } from "./look-schema.ts";

/** Form of the file; a program that changes it takes the next number. */
const exportForm = 1;

/** How much an export holds. */
export interface ArchiveTally {
  readonly documents: number;
  readonly looks: number;
  readonly families: number;
  readonly photos: number;
}

/** One line of an export. */
export type ArchiveLine =
  | { readonly kind: "header"; readonly madeAt: string }
  | { readonly kind: "document"; readonly document: StoredDocument }
  | { readonly kind: "look"; readonly look: Omit<StoredLook, "sequence"> }
  | { readonly kind: "family"; readonly id: string; readonly text: string }
  | { readonly kind: "photo"; readonly hash: string; readonly bytes: number; readonly base64: string }
  /** The last line: what the file holds, and the SHA-256 of every byte before this line. */
  | { readonly kind: "end"; readonly tally: ArchiveTally; readonly sha256: string };

const count = z.number().int().min(0);
const header = z.strictObject({ underbench_export: z.literal(exportForm), made_at: moment });
const family = z.strictObject({ family: z.strictObject({ id: hyphenName, text: z.string() }) });
const photo = z.strictObject({
  photo: z.strictObject({ sha256: photoHash, bytes: count, base64: z.string() }),
});
const look = z.strictObject({ look: storedLook });
const end = z.strictObject({
  end: z.strictObject({ documents: count, looks: count, families: count, photos: count, sha256: photoHash }),
});
const documentOfAnyKind = z.strictObject({ document: z.looseObject({ kind: z.enum(documentKinds) }) });
const anyLine = z.strictObject({
  underbench_export: z.unknown().optional(),
  document: z.unknown().optional(),
  look: z.unknown().optional(),
  family: z.unknown().optional(),
  photo: z.unknown().optional(),
  end: z.unknown().optional(),
});

const newerForm = (found: number): Finding => ({
  code: "export-newer",
  path: "underbench_export",
  got: `an export of form ${found}`,
  needed: `form ${exportForm}, the newest this program knows`,
  hint: "Import it with the newer program that made it. Nothing was imported.",
});

type Reading = ReturnType<typeof readJson>;

const parsedTo = <T>(schema: z.ZodType<T>, reading: Reading, read: (wire: T) => ArchiveLine): Parsed<ArchiveLine> => {
  const parsed = parseReading(schema, reading);
  return "findings" in parsed ? parsed : { value: read(parsed.value) };
};

const parseDocumentLine = (reading: Reading, kind: DocumentKind): Parsed<ArchiveLine> =>
  parsedTo(z.strictObject({ document: storedSchema(kind) }), reading, ({ document }) => ({
    kind: "document",
    document: readStoredDocument(kind, document),
  }));

const parseHeader = (reading: Reading, form: unknown): Parsed<ArchiveLine> =>
  typeof form === "number" && Number.isInteger(form) && form > exportForm
    ? { findings: [newerForm(form)] }
    : parsedTo(header, reading, ({ made_at }) => ({ kind: "header", madeAt: made_at }));

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Reads one line of an export; every finding of the line at once. */
export const parseArchiveLine = (text: string): Parsed<ArchiveLine> => {
  const reading = readJson(text);
  const value = reading.readable && isObject(reading.value) ? reading.value : {};
  if ("underbench_export" in value) return parseHeader(reading, value.underbench_export);
  if ("document" in value) {
    const kind = isObject(value.document) ? value.document.kind : undefined;
    return typeof kind === "string" && isDocumentKind(kind)
      ? parseDocumentLine(reading, kind)
      : parsedTo(documentOfAnyKind, reading, () => {
          throw new Error("A document of no kind was accepted.");
        });
  }
  if ("look" in value) {
    return parsedTo(look, reading, ({ look: { received_at, clock_off, ...fields } }) => ({
      kind: "look",
      look: { ...readLook(fields), receivedAt: received_at, clockOff: clock_off },
    }));
  }
  if ("family" in value) {
    return parsedTo(family, reading, ({ family: { id, text: sheet } }) => ({ kind: "family", id, text: sheet }));
  }
  if ("photo" in value) {
    return parsedTo(photo, reading, ({ photo: { sha256, bytes, base64 } }) => ({
      kind: "photo",
      hash: sha256,
      bytes,
      base64,
    }));
  }
  if ("end" in value) {
    return parsedTo(end, reading, ({ end: { sha256, ...tally } }) => ({ kind: "end", tally, sha256 }));
  }
  const parsed = parseReading(anyLine, reading);
  return "findings" in parsed ? parsed : { findings: [nothingKnown] };
};

const nothingKnown: Finding = {
  code: "missing-key",
  path: "",
  got: "an object that is no line of an export",
  needed: "one of the keys underbench_export, document, look, family, photo, end",
  hint: "",
};

/** One line of an export as text, without its line end. */
export const formatArchiveLine = (line: ArchiveLine): string => {
  switch (line.kind) {
    case "header":
      return JSON.stringify({ underbench_export: exportForm, made_at: line.madeAt });
    case "document":
      return JSON.stringify({ document: formatStoredDocument(line.document) });
    case "look":
      return JSON.stringify({ look: formatStoredLook(line.look) });
    case "family":
      return JSON.stringify({ family: { id: line.id, text: line.text } });
    case "photo":
      return JSON.stringify({ photo: { sha256: line.hash, bytes: line.bytes, base64: line.base64 } });
    case "end":
      return JSON.stringify({ end: { ...line.tally, sha256: line.sha256 } });
  }
};
