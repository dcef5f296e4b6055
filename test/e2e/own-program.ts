import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

const repository = fileURLToPath(new URL("../../", import.meta.url));

const freePort = async (): Promise<number> => {
  const server = createServer();
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const address = server.address();
  server.close();
  await once(server, "close");
  if (address === null || typeof address === "string") throw new Error("No port was given.");
  return address.port;
};

/** A program of a test's own that can be stopped and started again at the same address, on the same data. */
export interface OwnProgram {
  readonly address: string;
  readonly start: () => Promise<void>;
  readonly stop: () => Promise<void>;
  /** Stops it and forgets its data. */
  readonly end: () => Promise<void>;
}

const untilOpen = async (program: ChildProcess): Promise<void> => {
  if (program.stdout === null) throw new Error("The program was started without an output.");
  for await (const line of createInterface(program.stdout)) if (line.includes("http://")) return;
  throw new Error("The program ended before it said where it is open.");
};

/** Starts a program as a user does, on an empty data folder of its own. */
export const startOwnProgram = async (): Promise<OwnProgram> => {
  const data = mkdtempSync(join(tmpdir(), "underbench-own-"));
  const port = await freePort();
  let program: ChildProcess | null = null;
  const start = async () => {
    program = spawn(process.execPath, [join(repository, "tools/start.mjs")], {
      env: { ...process.env, PORT: String(port), DATA_DIR: data },
      stdio: ["ignore", "pipe", "inherit"],
    });
    await untilOpen(program);
  };
  const stop = async () => {
    if (program === null) return;
    const ended = once(program, "exit");
    program.kill("SIGKILL");
    await ended;
    program = null;
  };
  await start();
  return {
    address: `http://127.0.0.1:${port}`,
    start,
    stop,
    end: async () => {
      await stop();
      rmSync(data, { recursive: true, force: true });
    },
  };
};
