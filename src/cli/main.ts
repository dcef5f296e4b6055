import { Command, CommanderError } from "commander";
import type { Door } from "#contract";
import { addAppraiseCommand } from "./appraise/appraise-command.ts";
import { answerBatch, answerOne, listCalculations } from "./calc-command.ts";
import { addRecordCommands } from "./commands/record-commands.ts";
import { checkFamilyFile, printFamilySchema } from "./family-command.ts";
import { formatFindingsJson } from "./format-findings.ts";
import { loadDoors } from "./load-doors.ts";
import { printDoorSchema, printLayoutSchema, printVisitSchema } from "./schema-command.ts";
import { addSheetCommand } from "./sheet-command.ts";
import { type ExitStatus, type Terminal, writeLine } from "./terminal.ts";

/** What the command line is given from outside. */
export interface CommandLineParts {
  readonly terminal: Terminal;
  /** Opens the program for the browser; runs until it is stopped. */
  readonly serve: (options: { readonly empty: boolean }) => Promise<void>;
  /** Where the records lie; absent = data in the folder the command was given in. */
  readonly dataFolder?: string;
  /** The calculations offered; absent = all. */
  readonly doors?: readonly Door[];
}

interface CalcOptions {
  readonly list?: true;
  readonly batch?: true;
  readonly json?: true;
}

const calcExamples = `
One question:   echo '{"...": 1}' | underbench calc linkage.travel
Many questions: lines {"id": "...", "input": {...}} in, one line {"output": ...} or {"findings": [...]} out for each
What there is:  underbench calc --list; its form: underbench schema --door linkage.travel`;

const exitTable = `
Exit status: 0 done; 2 the input was refused, findings on standard error; 1 a fault of ours.
With --batch a refused line is answered by its findings and the status stays 0.`;

interface SchemaOptions {
  readonly door?: string;
  readonly layout?: true;
  readonly visit?: true;
}

/** Which schema was asked for: that of a family data sheet, or one other. */
const printSchema = async (parts: CommandLineParts, { door, layout, visit }: SchemaOptions): Promise<ExitStatus> => {
  const { terminal } = parts;
  const asked = [door, layout, visit].filter((option) => option !== undefined).length;
  if (asked > 1) {
    await writeLine(
      terminal.problems,
      `Not understood: ${asked} schemas asked for at once; give one of --visit, --layout, --door`,
    );
    return 2;
  }
  if (visit) return printVisitSchema(terminal);
  if (layout) return printLayoutSchema(terminal);
  return door === undefined
    ? printFamilySchema(terminal)
    : printDoorSchema(terminal, parts.doors ?? (await loadDoors()), door);
};

/** How calc was asked: exactly one of an id, --list and --batch. */
const chooseCalc = async (
  parts: CommandLineParts,
  id: string | undefined,
  options: CalcOptions,
): Promise<ExitStatus> => {
  const offered = parts.doors ?? (await loadDoors());
  const ways = [id !== undefined, options.list === true, options.batch === true].filter(Boolean).length;
  const jsonAlone = options.json === true && options.list !== true;
  if (ways !== 1 || jsonAlone) {
    const needed = jsonAlone ? "--json together with --list" : "an id, or --list, or --batch, and only one of them";
    const finding = {
      code: "usage",
      path: "",
      got: jsonAlone ? "--json alone" : `${ways} of them`,
      needed,
      hint: "underbench calc --help",
    };
    await writeLine(parts.terminal.problems, formatFindingsJson([finding]));
    return 2;
  }
  if (options.list === true) return listCalculations(parts.terminal, offered, options.json === true);
  if ("isTTY" in parts.terminal.input && parts.terminal.input.isTTY === true) {
    await writeLine(parts.terminal.problems, "Reading JSON from the keyboard; Ctrl-D ends it.");
  }
  return id === undefined ? answerBatch(parts.terminal, offered) : answerOne(parts.terminal, offered, id);
};

const buildProgram = (parts: CommandLineParts, end: (status: ExitStatus) => void): Command => {
  const { terminal } = parts;
  const program = new Command("underbench")
    .description("What a worn or torn part does to a car, computed: the same calculations the pages use.")
    .exitOverride()
    .showSuggestionAfterError()
    .configureOutput({
      writeOut: (text) => void terminal.output.write(text),
      writeErr: (text) => void terminal.problems.write(text),
      outputError: (text, write) => write(text.replace(/^error: /, "Not understood: ")),
    })
    .addHelpText("after", exitTable);

  program
    .command("calc")
    .description("answer a calculation: JSON on standard input, JSON on standard output")
    .argument("[id]", "which calculation")
    .option("--list", "one line for every calculation")
    .option("--json", "with --list: everything about them, with the JSON Schemas of input and output")
    .option("--batch", "answer many, one to a line")
    .addHelpText("after", calcExamples + exitTable)
    .action(async (id: string | undefined, options: CalcOptions) => end(await chooseCalc(parts, id, options)));

  program
    .command("family")
    .description("family data sheets")
    .command("check")
    .description("read a family data sheet and list everything that is wrong with it")
    .argument("<file>", "the sheet, a JSON file; - for standard input")
    .option("--json", "findings as JSON on standard output")
    .addHelpText("after", exitTable)
    .action(async (file: string, options: { readonly json?: true }) =>
      end(await checkFamilyFile(terminal, file, options.json === true)),
    );

  program
    .command("schema")
    .description("print the JSON Schema of a family data sheet")
    .option("--visit", "the schema of a visit file instead")
    .option("--layout", "the schema of a layout as bodies and joints instead")
    .option("--door <id>", "the schemas of input and output of a calculation instead")
    .action(async (options: SchemaOptions) => end(await printSchema(parts, options)));

  addAppraiseCommand(program, terminal, parts.dataFolder ?? "data", end);
  addSheetCommand(program, terminal, parts.dataFolder ?? "data", end);
  addRecordCommands(program, terminal, parts.dataFolder ?? "data", end);

  program
    .command("serve")
    .description("open the program for a browser on this machine (PORT chooses the port, DATA_DIR the data folder)")
    .option("--empty", "begin a fresh data folder as your own empty workshop, not as the invented one")
    .action((options: { readonly empty?: true }) => parts.serve({ empty: options.empty === true }));
  return program;
};

/** Runs one command line (without the program's own name) to its exit status. */
export const runCommandLine = async (words: readonly string[], parts: CommandLineParts): Promise<ExitStatus> => {
  let status: ExitStatus = 0;
  const program = buildProgram(parts, (ended) => {
    status = ended;
  });
  try {
    await program.parseAsync([...words], { from: "user" });
    return status;
  } catch (problem) {
    if (problem instanceof CommanderError) return problem.exitCode === 0 ? 0 : 2;
    await writeLine(
      parts.terminal.problems,
      `A fault of ours. ${problem instanceof Error ? problem.stack : String(problem)}`,
    );
    return 1;
  }
};
