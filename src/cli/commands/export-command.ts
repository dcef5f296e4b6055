import { existsSync } from "node:fs";
import { open, rename, rm } from "node:fs/promises";
import type { Writable } from "node:stream";
import type { Finding } from "#contract";
import { openRecords, type SalvageReport, salvageRecords } from "#records";
import { type ExitStatus, type Terminal, writeLine } from "../terminal.ts";
import { countWords } from "./count-words.ts";
import { noRecords, orRefuse, refuseWith } from "./file-trouble.ts";
import { damagedPhotoFindings } from "./photo-findings.ts";
import { sayProgress } from "./progress.ts";
import { type ExportReport, type ReadCases, type WriteLine, writeExport } from "./write-export.ts";

/** How an export was asked for. */
export interface ExportOptions {
  readonly data: string;
  /** Absent: standard output. */
  readonly out?: string;
  readonly salvage?: true;
}

const fileExists = (path: string): Finding => ({
  code: "file-exists",
  path: "",
  got: `a file that is there already: ${path}`,
  needed: "the name of a file that is not there yet",
  hint: "Nothing was written. Choose another name, such as one with the date.",
});

/** Writes to a file beside its place and puts it there when it is whole. */
const writeToFile = async (path: string, run: (write: WriteLine) => Promise<ExportReport>): Promise<ExportReport> => {
  const half = `${path}.part`;
  const handle = await open(half, "w");
  try {
    const report = await run(async (line) => {
      await handle.appendFile(line);
    });
    await handle.sync();
    await handle.close();
    await rename(half, path);
    return report;
  } catch (problem) {
    await handle.close();
    await rm(half, { force: true });
    throw problem;
  }
};

const writeToStream =
  (to: Writable): WriteLine =>
  async (line) => {
    await new Promise<void>((resolve, reject) => {
      to.write(line, (problem) => (problem ? reject(problem) : resolve()));
    });
  };

const salvageWords = ({ lostLooks }: SalvageReport): string =>
  lostLooks === null
    ? "How many looks are lost cannot be told."
    : lostLooks === 0
      ? "Every look that was acknowledged is there."
      : `${lostLooks} looks that were acknowledged cannot be read.`;

/** Runs with a way to read cases: records that are opened, or what is still whole of damaged ones. */
const withCases = async (
  { data, salvage }: ExportOptions,
  run: (readCases: ReadCases) => Promise<ExportReport>,
): Promise<{ readonly report: ExportReport; readonly salvaged: SalvageReport | null }> => {
  if (salvage === true) {
    let salvaged: SalvageReport | null = null;
    const report = await run(async (read) => {
      salvaged = await salvageRecords(data, read);
    });
    return { report, salvaged };
  }
  const records = await openRecords(data);
  try {
    return { report: await run((read) => records.archive.readAll(read)), salvaged: null };
  } finally {
    await records.close();
  }
};

/** Writes everything on record as one file of JSON lines. */
export const exportRecords = (terminal: Terminal, options: ExportOptions): Promise<ExitStatus> =>
  orRefuse(terminal, async () => {
    const { data, out } = options;
    if (!existsSync(data)) return refuseWith(terminal, [noRecords(data)]);
    if (out !== undefined && existsSync(out)) return refuseWith(terminal, [fileExists(out)]);
    const told = sayProgress(terminal.problems, () => performance.now());
    const madeAt = new Date().toISOString();
    const { report, salvaged } = await withCases(options, (readCases) => {
      const write = (line: WriteLine): Promise<ExportReport> => writeExport(data, readCases, line, madeAt, told);
      return out === undefined ? write(writeToStream(terminal.output)) : writeToFile(out, write);
    });
    await writeLine(
      terminal.problems,
      `Exported${out === undefined ? "" : ` to ${out}`}: ${countWords(report.tally)}.`,
    );
    if (salvaged !== null) await writeLine(terminal.problems, salvageWords(salvaged));
    const damaged = damagedPhotoFindings(report.damagedPhotos);
    return damaged.length === 0 ? 0 : refuseWith(terminal, damaged);
  });
