import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { repository } from "../architecture/source-files.ts";

/** What a command of the program says when this Node claims to be another version. */
const runAs = (version: string, file: string) => {
  const pretend = `Object.defineProperty(process.versions, "node", { value: "${version}" }); import("./${file}");`;
  const ended = spawnSync(process.execPath, ["-e", pretend], { cwd: repository, encoding: "utf8" });
  return [ended.status, ended.stderr];
};

describe("an old Node", () => {
  it.each(["tools/start.mjs", "tools/test.mjs", "bin/underbench.mjs"])("is turned away by %s in one line", (file) => {
    const words = "Underbench needs Node.js 20.19 or newer; this is 20.18.3. Install a newer Node.js and try again.\n";
    expect(runAs("20.18.3", file)).toEqual([1, words]);
  });
});
