import { loadIsInvented } from "#casework";
import { checkMixing, type Finding } from "#contract";
import type { ArchiveClash, ArchiveOutcome, Records } from "#records";
import { openFamilyFiles, openRecords } from "#records";
import { type ExitStatus, type Terminal, writeLine } from "../terminal.ts";
import { countWords } from "./count-words.ts";
import { orRefuse, refuseWith } from "./file-trouble.ts";
import { sayProgress, type Told } from "./progress.ts";
import { bytesOfPhoto, type CheckedExport, checkExport, readExportLines } from "./read-export.ts";

type Families = Awaited<ReturnType<typeof openFamilyFiles>>;

/** Clashes are listed up to this many. */
const mostListed = 50;

const clashFinding = (got: string): Finding => ({
  code: "export-clash",
  path: "",
  got,
  needed: "the same as stands in the records, or something that does not stand there yet",
  hint: "Nothing was imported. Import into an empty data folder, or settle what differs first.",
});

const describeClash = ({ what, id, version }: ArchiveClash): string =>
  version === null
    ? `another look ${id}`
    : `another version ${version} of ${what} ${id}, or a version missing before it`;

/** The first car or settings of an export that do not belong into this workshop, or into one with the others. */
const findMixing = async ({ documents }: CheckedExport, { cases }: Records): Promise<readonly Finding[]> => {
  const said = documents.flatMap(({ body }) => ("invented" in body ? [body.invented] : []));
  const standing = (await loadIsInvented(cases)) ?? said[0] ?? null;
  const other = said.find((invented) => invented !== standing);
  return other === undefined ? [] : checkMixing(other, standing, "");
};

/** Everything in an export that stands otherwise in the records. */
const findClashes = async (
  content: CheckedExport,
  records: Records,
  families: Families,
): Promise<readonly Finding[]> => {
  const findings: Finding[] = [];
  for (const { id, text } of content.families) {
    const standing = await families.load(id);
    if (standing !== null && standing.text !== text) findings.push(clashFinding(`another family ${id}`));
  }
  findings.push(...(await findMixing(content, records)));
  const outcome = await records.archive.foresee(content);
  if ("clashes" in outcome) findings.push(...outcome.clashes.map((clash) => clashFinding(describeClash(clash))));
  return findings.slice(0, mostListed);
};

const keepPhotos = async (path: string, { photos }: Records, of: number, told: Told): Promise<number> => {
  let added = 0;
  let done = 0;
  for await (const { line } of readExportLines(path)) {
    if (!("kind" in line) || line.kind !== "photo") continue;
    const bytes = bytesOfPhoto(line);
    if (bytes === null) throw new Error("The export changed while it was imported.");
    if (!(await photos.hasPhoto(line.hash))) {
      await photos.savePhoto(bytes);
      added++;
    }
    done++;
    told("photos", done, of);
  }
  return added;
};

const keepFamilies = async (content: CheckedExport, families: Families): Promise<number> => {
  let added = 0;
  for (const { id, text } of content.families) {
    if ((await families.load(id)) !== null) continue;
    await families.save(id, text, null);
    added++;
  }
  return added;
};

const reportWords = (
  { added, known }: Exclude<ArchiveOutcome, { clashes: unknown }>,
  families: number,
  photos: number,
): string => {
  const words = `${countWords({ ...added, families, photos })} added`;
  const already = known.documents + known.looks;
  return already === 0 ? words : `${words}; ${already} of documents and looks were here already`;
};

/** Puts an export into the records, all of it or nothing: it is read to its end and held against them before anything is written. */
export const importRecords = (terminal: Terminal, path: string, data: string): Promise<ExitStatus> =>
  orRefuse(terminal, async () => {
    const told = sayProgress(terminal.problems, () => performance.now());
    const content = await checkExport(path, told);
    if (!("documents" in content)) return refuseWith(terminal, content);
    const records = await openRecords(data);
    try {
      const families = await openFamilyFiles(data);
      const clashes = await findClashes(content, records, families);
      if (clashes.length > 0) return await refuseWith(terminal, clashes);
      const photosAdded = await keepPhotos(path, records, content.photos, told);
      const familiesAdded = await keepFamilies(content, families);
      const outcome = await records.archive.putAll(content);
      if ("clashes" in outcome) {
        return await refuseWith(
          terminal,
          outcome.clashes.map((clash) => clashFinding(describeClash(clash))),
        );
      }
      await writeLine(terminal.output, `Imported: ${reportWords(outcome, familiesAdded, photosAdded)}.`);
      return 0;
    } finally {
      await records.close();
    }
  });
