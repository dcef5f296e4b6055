import { openRecords } from "#records";
import { openFamilyShelf, startServer } from "#server";

/** The server of the program on a data folder and a free port, as `serve` starts it, to be killed. */
const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error("A data folder is needed.");
const records = await openRecords(folder);
const noFamilies = {
  list: async () => [],
  load: async () => null,
  save: async () => ({ kind: "superseded", current: null }) as const,
};
const server = await startServer(
  {
    pages: null,
    families: openFamilyShelf(noFamilies, {}),
    records: { cases: records.cases, photos: records.photos, now: () => new Date().toISOString() },
    today: () => "",
    report: (problem) => void process.stderr.write(`${String(problem)}\n`),
  },
  0,
);
process.stdout.write(`${server.address}\n`);
