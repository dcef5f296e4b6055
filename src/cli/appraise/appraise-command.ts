import type { Command } from "commander";
import { type Appraisal, appraiseVisit, type VisitRecord } from "#casework";
import { formatAppraisal } from "#contract";
import { loadSolver } from "../load-doors.ts";
import { refuse } from "../refuse.ts";
import { type ExitStatus, type Terminal, writeLine } from "../terminal.ts";
import { formatAppraisalText } from "./appraisal-text.ts";
import { loadVisit } from "./load-visit.ts";
import { saveOwnersPage } from "./save-owners-page.ts";

interface AppraiseOptions {
  readonly json?: true;
  readonly pdf?: string;
  readonly data: string;
}

const notes = `
VISIT.json holds one visit: the car, its family (on file, as a sheet, or as a silhouette), shop rates, the owner's
complaints, looks of this visit and of those before, and, where they exist, plan, job card and hand-over. Its form:
underbench schema --visit. An invented example: docs/examples/visit.json.

  underbench appraise visit.json            findings, suspects, plan, job card and hand-over as text
  underbench appraise visit.json --json     the same as JSON, units in the keys
  underbench appraise visit.json --pdf owner.pdf    and the owner's page

Exit status: 0 done; 2 the file was refused, findings on standard error (with --json on standard output); 1 a fault of ours.`;

/** Appraises a visit; a person waiting at the terminal is told that it takes a moment. */
const appraise = async (terminal: Terminal, record: VisitRecord): Promise<Appraisal> => {
  const solver = await loadSolver();
  if ("isTTY" in terminal.problems && terminal.problems.isTTY === true)
    await writeLine(terminal.problems, "Judging places, balancing corners, searching the plan of least cost.");
  return appraiseVisit(record, solver);
};

const runAppraise = async (terminal: Terminal, path: string, options: AppraiseOptions): Promise<ExitStatus> => {
  const loaded = await loadVisit(path, terminal.input, options.data);
  if ("findings" in loaded) return refuse(terminal, loaded.findings, options.json === true);
  const { car, record } = loaded;
  const appraisal = await appraise(terminal, record);
  if (options.pdf !== undefined) {
    const saved = await saveOwnersPage(options.pdf, loaded, appraisal);
    if (saved !== null) return refuse(terminal, [saved], options.json === true);
  }
  await writeLine(
    terminal.output,
    options.json === true
      ? JSON.stringify(formatAppraisal(appraisal), null, 2)
      : formatAppraisalText(car, record, appraisal),
  );
  return 0;
};

/** Adds the command that appraises a visit from one file. */
export const addAppraiseCommand = (
  program: Command,
  terminal: Terminal,
  dataFolder: string,
  end: (status: ExitStatus) => void,
): void => {
  program
    .command("appraise")
    .description("findings, suspects, plan, job card and hand-over of a visit that stands in one file")
    .argument("<file>", "the visit, a JSON file; - for standard input")
    .option("--json", "as JSON on standard output")
    .option("--pdf <file>", "also write the owner's page; a file that is there already is not written over")
    .option("--data <folder>", "the data folder with the workshop's own families", dataFolder)
    .addHelpText("after", notes)
    .action(async (file: string, options: AppraiseOptions) => end(await runAppraise(terminal, file, options)));
};
