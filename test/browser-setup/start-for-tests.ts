import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import type { TestProject } from "vitest/node";
import { findBrowser } from "./find-browser.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** Address of the program under test, without a closing slash. */
    readonly address: string;
  }
}

const repository = fileURLToPath(new URL("../../", import.meta.url));

/** Address the started program prints; throws where it ends without printing one. */
const addressOf = async (program: ChildProcess): Promise<string> => {
  if (program.stdout === null) throw new Error("The program was started without an output.");
  for await (const line of createInterface(program.stdout)) {
    const address = /http:\/\/\S+/.exec(line)?.[0];
    if (address !== undefined) return address;
  }
  throw new Error("The program ended before it said where it is open.");
};

/** Starts the program as a user does, on an empty data folder and a free port, and makes sure there is a browser. */
export const setup = async (project: TestProject): Promise<() => void> => {
  await findBrowser();
  const data = mkdtempSync(join(tmpdir(), "underbench-e2e-"));
  const program = spawn(process.execPath, [join(repository, "tools/start.mjs")], {
    env: { ...process.env, PORT: "0", DATA_DIR: data },
    stdio: ["ignore", "pipe", "inherit"],
  });
  project.provide("address", await addressOf(program));
  return () => {
    program.kill("SIGTERM");
    rmSync(data, { recursive: true, force: true });
  };
};
