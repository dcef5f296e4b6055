import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "vite";
import { beforeAll, describe, expect, it } from "vitest";
import type { Look } from "#casework";
import { formatLook } from "#contract";
import { openRecords } from "#records";
import { inventedCar, inventedVisit, makeLook, receivedAt, seededNumbers } from "./made-cases.ts";

const repository = fileURLToPath(new URL("../../", import.meta.url));
const bundles = join(repository, ".cache", "records");
const kills = 100;
/** Two servers at once, each on a data folder of its own: the machine of the tests has two cores. */
const tracks = 2;
/** Clients that send at once. */
const senders = 3;
/** The kill comes after so many answers at most, and then within so many milliseconds. */
const mostAnswers = 12;
const longestDelayMs = 15;

/** Takes long to load, and nothing is printed here. */
const withoutPdf: Plugin = {
  name: "without-pdf",
  enforce: "pre",
  resolveId: (id) => (id === "pdfkit" ? "\0without-pdf" : null),
  load: (id) => (id === "\0without-pdf" ? "export default class {}" : null),
};

/** One file of plain JavaScript, so that a hundred starts do not take a hundred times as long as one. */
const bundleProgram = async (): Promise<void> => {
  await build({
    configFile: false,
    publicDir: false,
    root: repository,
    logLevel: "error",
    plugins: [withoutPdf],
    build: {
      ssr: true,
      outDir: bundles,
      emptyOutDir: true,
      target: "node20",
      minify: true,
      rolldownOptions: { input: { "killed-program": join(repository, "test/records/killed-program.ts") } },
    },
    ssr: { noExternal: true, external: ["better-sqlite3"] },
  });
};

/** What was sent to one server until it was killed, and which of it was acknowledged. */
interface Load {
  readonly sent: Map<string, Look>;
  readonly acknowledged: Set<string>;
}

interface Answers {
  readonly answers: readonly { readonly id: string; readonly outcome: string }[];
}

const startProgram = async (folder: string): Promise<{ readonly program: ChildProcess; readonly address: string }> => {
  const program = spawn(process.execPath, [join(bundles, "killed-program.js"), folder], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  if (program.stdout === null) throw new Error("The program was started without an output.");
  for await (const address of createInterface(program.stdout)) return { program, address };
  throw new Error("The program ended before it said where it is open.");
};

/** Sends batch after batch until the server is gone. */
const sendUntilGone = async (
  address: string,
  visit: string,
  numbers: () => readonly number[],
  load: Load,
  answered: () => void,
): Promise<void> => {
  for (;;) {
    const looks = numbers().map((n) => makeLook(n, { visit }));
    for (const look of looks) load.sent.set(look.id, look);
    try {
      const reply = await fetch(`${address}/api/looks`, {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ looks: looks.map(formatLook) }),
      });
      const { answers } = (await reply.json()) as Answers;
      for (const { id, outcome } of answers) if (outcome === "stored") load.acknowledged.add(id);
      answered();
    } catch {
      return;
    }
  }
};

const openPromise = (): { readonly promise: Promise<void>; readonly resolve: () => void } => {
  let resolve = (): void => undefined;
  const promise = new Promise<void>((done) => {
    resolve = done;
  });
  return { promise, resolve };
};

/** Starts a server, loads it, kills it at a random moment; returns what was sent and acknowledged. */
const loadAndKill = async (folder: string, visit: string, first: number, random: () => number): Promise<Load> => {
  const { program, address } = await startProgram(folder);
  const load: Load = { sent: new Map(), acknowledged: new Set() };
  let next = first;
  const numbers = (): readonly number[] =>
    Array.from({ length: 1 + Math.floor(random() * 5) }, () => {
      next++;
      return next;
    });
  const wanted = 1 + Math.floor(random() * mostAnswers);
  const delay = random() * longestDelayMs;
  const answersCame = openPromise();
  let answers = 0;
  const answered = (): void => {
    answers++;
    if (answers === wanted) answersCame.resolve();
  };
  const sending = Array.from({ length: senders }, () => sendUntilGone(address, visit, numbers, load, answered));
  await answersCame.promise;
  await new Promise((resolve) => setTimeout(resolve, delay));
  program.kill("SIGKILL");
  await Promise.all([...sending, once(program, "exit")]);
  return load;
};

const makeVisits = async (folder: string, visits: readonly string[]): Promise<void> => {
  const { cases, close } = await openRecords(folder);
  const meta = { expectedVersion: 0, by: "MK", at: receivedAt };
  await cases.saveDocument("car", "car-1", inventedCar, meta);
  for (const visit of visits) await cases.saveDocument("visit", visit, inventedVisit, meta);
  await close();
};

describe("the server killed under load", { timeout: 600_000 }, () => {
  beforeAll(bundleProgram, 120_000);

  it.concurrent.each(Array.from({ length: tracks }, (_, track) => track))(
    `holds every acknowledged look, whole and numbered without a gap, after each of ${kills} kills (track %i)`,
    async (track) => {
      const random = seededNumbers(1000 + track);
      const folder = mkdtempSync(join(tmpdir(), "underbench-killed-"));
      const rounds = Array.from({ length: kills / tracks }, (_, round) => ({
        visit: `visit-${round}`,
        first: round * 100_000,
      }));
      await makeVisits(
        folder,
        rounds.map(({ visit }) => visit),
      );
      let before = 0;
      let acknowledged = 0;
      for (const { visit, first } of rounds) {
        const load = await loadAndKill(folder, visit, first, random);
        const records = await openRecords(folder);
        const kept = await records.cases.loadLooks({ visit });
        await records.close();
        const ids = new Set(kept.map(({ id }) => id));
        expect(
          [...load.acknowledged].filter((id) => !ids.has(id)),
          visit,
        ).toEqual([]);
        for (const { sequence, receivedAt: _, clockOff: __, ...look } of kept)
          expect(look).toEqual(load.sent.get(look.id));
        expect(kept.map(({ sequence }) => sequence)).toEqual(kept.map((_, index) => before + index + 1));
        before += kept.length;
        acknowledged += load.acknowledged.size;
      }
      expect(acknowledged).toBeGreaterThan(kills);
      rmSync(folder, { recursive: true });
    },
  );
});
