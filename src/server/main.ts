import { existsSync } from "node:fs";
import { join } from "node:path";
import { openFamilyFiles, openRecords, type Records, RecordsTrouble } from "#records";
import { openFamilyShelf } from "./family-shelf.ts";
import { doorsFor, loadSolver } from "./load-doors.ts";
import { exampleFamilies, givenFamilies, isFresh, openWorkshop } from "./open-workshop.ts";
import { startServer } from "./start-server.ts";

const usualPort = 4870;

/** The port asked for in the environment; anything but a port number is said and refused. */
const wantedPort = (asked: string | undefined): number => {
  if (asked === undefined || asked === "") return usualPort;
  const port = Number(asked);
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Error(`PORT is "${asked}"; a number from 0 to 65535 is needed.`);
  return port;
};

/** The records of the data folder; null, with the reason said, where they cannot be opened. */
const openRecordsOrSay = async (folder: string): Promise<Records | null> => {
  try {
    return await openRecords(folder);
  } catch (problem) {
    if (!(problem instanceof RecordsTrouble)) throw problem;
    const { code, got, needed, hint } = problem.finding;
    process.stderr.write(`The records in ${folder} were not opened  [${code}]\n`);
    process.stderr.write(`  got     ${got}\n  needed  ${needed}\n  hint    ${hint}\n`);
    return null;
  }
};

/** How the program is begun. */
export interface BeginOptions {
  /** A fresh data folder becomes an empty workshop of one's own, not the invented one. */
  readonly empty?: boolean;
}

/** What is said of the workshop that was opened. */
const workshopWords = {
  invented: "This is an invented workshop: every car, name and figure in it is made up.",
  own: "This is your own workshop.",
} as const;

/** Runs the server until the process is asked to end; `home` is the folder of the program. */
export const serve = async (home: string, options: BeginOptions = {}): Promise<void> => {
  const builtPages = join(home, "dist", "web");
  const dataFolder = process.env.DATA_DIR ?? join(home, "data");
  const fresh = isFresh(dataFolder);
  const records = await openRecordsOrSay(dataFolder);
  if (records === null) {
    process.exitCode = 2;
    return;
  }
  const store = await openFamilyFiles(dataFolder);
  const empty = options.empty === true || (process.env.START_EMPTY ?? "") !== "";
  const today = new Date().toISOString().slice(0, 10);
  const kind = await openWorkshop({ cases: records.cases, families: store }, { fresh, empty, today });
  const solver = await loadSolver();
  const server = await startServer(
    {
      pages: existsSync(builtPages) ? builtPages : null,
      doors: doorsFor(solver),
      solver,
      families: openFamilyShelf(store, givenFamilies(kind), exampleFamilies(kind)),
      records: { cases: records.cases, photos: records.photos, now: () => new Date().toISOString() },
      today: () => new Intl.DateTimeFormat("en-GB", { dateStyle: "long" }).format(new Date()),
      report: (problem) => void process.stderr.write(`${problem instanceof Error ? problem.stack : String(problem)}\n`),
    },
    wantedPort(process.env.PORT),
  );
  process.stdout.write(`Underbench is open at ${server.address}\n${workshopWords[kind]}\n`);
  const end = (): void => {
    void server
      .stop()
      .then(() => records.close())
      .then(() => process.exit(0));
  };
  process.once("SIGINT", end);
  process.once("SIGTERM", end);
};
