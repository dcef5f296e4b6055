import type { Command } from "commander";
import { formatSheetFindings, parseSheetQuestion } from "#contract";
import { printAskedSheet } from "#report";
import { loadFamilyOnFile } from "./load-family.ts";
import { readFileText } from "./read-input.ts";
import { refuse } from "./refuse.ts";
import { saveNewFile } from "./save-new-file.ts";
import { type ExitStatus, type Terminal, writeLine } from "./terminal.ts";

interface SheetOptions {
  readonly pdf?: string;
  readonly by?: string;
  readonly data: string;
}

const notes = `
QUESTION.json says which sheet of which car line, as POST /api/sheets is asked (docs/http.md): what one fault does, how to
hold a corner, the whole car, a corner over its travel, one matched to its readings, a hydraulic bush without its fluid, or
a layout from a file.

  echo '{"sheet": "shake", "family": "siskin-coupe", "corner": "front-left",
         "position": "front-left/tension-link/inner-bush"}' | underbench sheet - --pdf shake.pdf

Exit status: 0 done; 2 refused, findings on standard error; 1 a fault of ours.`;

const dateWords = new Intl.DateTimeFormat("en-GB", { dateStyle: "long" });

const runSheet = async (terminal: Terminal, path: string, options: SheetOptions): Promise<ExitStatus> => {
  const read = await readFileText(path, terminal.input);
  const asked = "findings" in read ? read : parseSheetQuestion(read.text);
  if ("findings" in asked) return refuse(terminal, asked.findings);
  const found: Parameters<typeof asked.value.withFamilies>[0][number][] = [];
  for (const { path: where, id } of asked.value.families) {
    const loaded = await loadFamilyOnFile(id, where, options.data);
    if ("findings" in loaded) return refuse(terminal, loaded.findings);
    found.push(loaded.family);
  }
  const stamp = { date: dateWords.format(new Date()), ...(options.by === undefined ? {} : { by: options.by }) };
  const question = asked.value.withFamilies(found);
  const printed = printAskedSheet(question, stamp);
  if ("findings" in printed) return refuse(terminal, formatSheetFindings(question.kind, printed.findings));
  const name = options.pdf ?? printed.fileName;
  const saved = await saveNewFile(name, await printed.pdf);
  if (saved !== null) return refuse(terminal, [saved]);
  await writeLine(terminal.output, name);
  return 0;
};

/** Adds the command that prints one computed sheet of a car line. */
export const addSheetCommand = (
  program: Command,
  terminal: Terminal,
  dataFolder: string,
  end: (status: ExitStatus) => void,
): void => {
  program
    .command("sheet")
    .description("print one computed sheet of a car line: a PDF of one A4 page")
    .argument("<file>", "what is asked, a JSON file; - for standard input")
    .option("--pdf <file>", "where to; a file that is there already is not written over")
    .option("--by <name>", "who makes it")
    .option("--data <folder>", "the data folder with the workshop's own families", dataFolder)
    .addHelpText("after", notes)
    .action(async (file: string, options: SheetOptions) => end(await runSheet(terminal, file, options)));
};
