import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import type { StoredDocument, StoredLook } from "#casework";
import { type ArchiveLine, type ArchiveTally, type Finding, inputTooLargeFinding, parseArchiveLine } from "#contract";
import { decodeText, readLines } from "../read-input.ts";
import type { Told } from "./progress.ts";

/** What an export holds, read to its end and found to be as it was made; photos are read again when they are kept. */
export interface CheckedExport {
  readonly documents: readonly StoredDocument[];
  readonly looks: readonly Omit<StoredLook, "sequence">[];
  readonly families: readonly { readonly id: string; readonly text: string }[];
  readonly photos: number;
}

/** Findings are listed up to this many; an export that is wrong throughout is wrong in one place. */
const mostFindings = 20;

/** A finding about one line as one about the file: line[12].look.id, counted from 1. */
const atLine = (finding: Finding, line: number): Finding => ({
  ...finding,
  path: `line[${line}]${finding.path === "" ? "" : `.${finding.path}`}`,
});

const cut = (lines: number): Finding => ({
  code: "export-cut",
  path: "",
  got: `a file that ends after ${lines} ${lines === 1 ? "line" : "lines"} without its last one`,
  needed: 'the whole file, to its last line {"end": ...}',
  hint: "It was cut on its way. Copy it again from where it was made. Nothing was imported.",
});

const altered = (got: string): Finding => ({
  code: "export-altered",
  path: "",
  got,
  needed: "the file as it was made",
  hint: "Copy it again from where it was made; it must not be edited or converted. Nothing was imported.",
});

const noHeader: Finding = {
  code: "export-altered",
  path: "line[1]",
  got: "a first line that is not that of an export",
  needed: '{"underbench_export": 1, "made_at": ...}',
  hint: "underbench export writes such files. Nothing was imported.",
};

/** The bytes of a photo line, or null where they are not those of its hash. */
export const bytesOfPhoto = ({ base64, bytes, hash }: Extract<ArchiveLine, { kind: "photo" }>): Uint8Array | null => {
  const photo = Buffer.from(base64, "base64");
  const isWhole = photo.length === bytes && createHash("sha256").update(photo).digest("hex") === hash;
  return isWhole ? photo : null;
};

/** Every line of an export, read; a line that cannot be taken comes with its findings. */
export async function* readExportLines(path: string): AsyncGenerator<{
  readonly number: number;
  readonly bytes: Uint8Array;
  readonly line: ArchiveLine | readonly Finding[];
}> {
  let number = 0;
  for await (const bytes of readLines(createReadStream(path))) {
    number++;
    const at = number;
    const text = bytes === null ? { findings: [inputTooLargeFinding] } : decodeText(bytes);
    const parsed = "findings" in text ? text : parseArchiveLine(text.text);
    const line = "findings" in parsed ? parsed.findings.map((finding) => atLine(finding, at)) : parsed.value;
    yield { number, bytes: bytes ?? new Uint8Array(), line };
  }
}

/** Takes the lines of an export one by one and says at the end what they come to. */
class ExportCheck {
  readonly findings: Finding[] = [];
  private readonly sha = createHash("sha256");
  private readonly documents: StoredDocument[] = [];
  private readonly looks: Omit<StoredLook, "sequence">[] = [];
  private readonly families: { readonly id: string; readonly text: string }[] = [];
  private photos = 0;
  private lines = 0;
  private end: Extract<ArchiveLine, { kind: "end" }> | null = null;

  take(number: number, bytes: Uint8Array, line: ArchiveLine | readonly Finding[]): void {
    this.lines = number;
    if (this.end !== null) this.findings.push(altered(`something behind its last line, in line ${number}`));
    if (!("kind" in line)) {
      this.findings.push(...line);
      return;
    }
    if ((line.kind === "header") !== (number === 1)) this.findings.push(noHeader);
    if (line.kind === "end") {
      this.end = line;
      return;
    }
    this.sha.update(bytes).update("\n");
    this.keep(line);
  }

  finish(): CheckedExport | readonly Finding[] {
    if (this.end === null) return [cut(this.lines)];
    if (this.findings.length > 0) return this.findings;
    const { tally, sha256 } = this.end;
    const found: ArchiveTally = {
      documents: this.documents.length,
      looks: this.looks.length,
      families: this.families.length,
      photos: this.photos,
    };
    const off = (Object.keys(found) as (keyof ArchiveTally)[]).filter((what) => found[what] !== tally[what]);
    if (off.length > 0) return [altered(off.map((what) => `${found[what]} ${what} of ${tally[what]}`).join(", "))];
    if (this.sha.digest("hex") !== sha256) return [altered("bytes that are not those its last line speaks of")];
    return { documents: this.documents, looks: this.looks, families: this.families, photos: this.photos };
  }

  private keep(line: Exclude<ArchiveLine, { kind: "end" }>): void {
    if (line.kind === "document") this.documents.push(line.document);
    if (line.kind === "look") this.looks.push(line.look);
    if (line.kind === "family") this.families.push({ id: line.id, text: line.text });
    if (line.kind === "photo") {
      this.photos++;
      if (bytesOfPhoto(line) === null) this.findings.push(altered(`a photo whose bytes are not ${line.hash}`));
    }
  }
}

/** Reads an export to its end and checks every line, its counts and its digest; writes nothing anywhere. */
export const checkExport = async (path: string, told: Told): Promise<CheckedExport | readonly Finding[]> => {
  const check = new ExportCheck();
  for await (const { number, bytes, line } of readExportLines(path)) {
    check.take(number, bytes, line);
    told("lines read", number, null);
    if (check.findings.length >= mostFindings) break;
  }
  return check.finish();
};
