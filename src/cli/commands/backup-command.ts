import { existsSync } from "node:fs";
import { restoreBackup, saveBackup } from "#records";
import { type ExitStatus, type Terminal, writeLine } from "../terminal.ts";
import { countWords } from "./count-words.ts";
import { noRecords, orRefuse, refuseWith } from "./file-trouble.ts";
import { damagedPhotoFindings } from "./photo-findings.ts";
import { sayProgress } from "./progress.ts";

/** Copies everything of a data folder into an empty folder and reads the copy through. */
export const backUp = (terminal: Terminal, to: string, data: string): Promise<ExitStatus> =>
  orRefuse(terminal, async () => {
    if (!existsSync(data)) return refuseWith(terminal, [noRecords(data)]);
    const told = sayProgress(terminal.problems, () => performance.now());
    const report = await saveBackup(data, to, new Date().toISOString(), told);
    await writeLine(terminal.output, `Backed up to ${to} and read back: ${countWords(report)}.`);
    const damaged = damagedPhotoFindings(report.damagedPhotos);
    return damaged.length === 0 ? 0 : refuseWith(terminal, damaged);
  });

/** Puts a backup into an empty data folder and reads it back. */
export const restore = (terminal: Terminal, from: string, data: string): Promise<ExitStatus> =>
  orRefuse(terminal, async () => {
    const told = sayProgress(terminal.problems, () => performance.now());
    const report = await restoreBackup(from, data, told);
    await writeLine(terminal.output, `Restored into ${data} and read back: ${countWords(report)}.`);
    return 0;
  });
