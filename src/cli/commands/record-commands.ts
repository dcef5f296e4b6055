import type { Command } from "commander";
import type { ExitStatus, Terminal } from "../terminal.ts";
import { backUp, restore } from "./backup-command.ts";
import { type ExportOptions, exportRecords } from "./export-command.ts";
import { importRecords } from "./import-command.ts";

interface DataOption {
  readonly data: string;
}

const exitTable = `
Exit status: 0 done; 2 refused, findings on standard error; 1 a fault of ours.`;

const exportNotes = `
One JSON object to a line: a header, every version of every document, every look in its order, the workshop's own
families, the photos, and a last line with how much there is and the SHA-256 of all bytes before it. The program may
run meanwhile; the export is as the records stood at one moment. A file that is there already is not written over.`;

const importNotes = `
The file is read to its end and held against the records before anything is written. A file that was cut, changed, or
that says otherwise than the records is refused whole. What is here already changes nothing, so that importing twice,
or again after a broken run, is safe. With a large file, close the program meanwhile.`;

const backupNotes = `
The folder must be empty or not be there yet. It gets the database as it stands at one moment, the photos, the
families, and last of all backup.json; a backup without it is not finished. The program may run meanwhile.`;

const restoreNotes = `
The data folder must be empty or not be there yet, and the program must not run. The backup is read through before
anything is written, and the copy is read back.`;

/** Adds the commands about the records as a whole; `dataFolder` is where they lie unless --data says otherwise. */
export const addRecordCommands = (
  program: Command,
  terminal: Terminal,
  dataFolder: string,
  end: (status: ExitStatus) => void,
): void => {
  const command = (name: string, description: string, notes: string): Command =>
    program
      .command(name)
      .description(description)
      .option("--data <folder>", "the data folder", dataFolder)
      .addHelpText("after", notes + exitTable);

  command("export", "write everything on record as one file", exportNotes)
    .option("--out <file>", "the file to write; without it, standard output")
    .option("--salvage", "read what is still whole out of damaged records")
    .action(async (options: ExportOptions) => end(await exportRecords(terminal, options)));

  command("import", "put an exported file into the records, all of it or nothing", importNotes)
    .argument("<file>", "a file written by underbench export")
    .action(async (file: string, { data }: DataOption) => end(await importRecords(terminal, file, data)));

  command("backup", "copy the data folder, and read the copy back", backupNotes)
    .argument("<folder>", "an empty folder, or one that is not there yet")
    .action(async (folder: string, { data }: DataOption) => end(await backUp(terminal, folder, data)));

  command("restore", "put a backup into an empty data folder, and read it back", restoreNotes)
    .argument("<folder>", "a folder written by underbench backup")
    .action(async (folder: string, { data }: DataOption) => end(await restore(terminal, folder, data)));
};
