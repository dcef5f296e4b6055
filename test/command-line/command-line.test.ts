import { spawn } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { repository } from "../architecture/source-files.ts";

interface Ended {
  readonly status: number | null;
  readonly output: string;
  readonly problems: string;
}

/** Runs the command as a shell does, from a folder that is not the program's. */
const run = (words: readonly string[], input: string): Promise<Ended> =>
  new Promise((resolve, reject) => {
    const command = spawn(process.execPath, [join(repository, "bin/underbench.mjs"), ...words], { cwd: tmpdir() });
    let output = "";
    let problems = "";
    command.stdout.on("data", (chunk: Buffer) => {
      output += chunk.toString("utf8");
    });
    command.stderr.on("data", (chunk: Buffer) => {
      problems += chunk.toString("utf8");
    });
    command.on("error", reject);
    command.on("close", (status) => resolve({ status, output, problems }));
    command.stdin.on("error", () => undefined);
    command.stdin.end(input);
  });

describe("the command as a process", { timeout: 60_000 }, () => {
  it("lists the calculations", async () => {
    const ended = await run(["calc", "--list"], "");
    expect([ended.status, ended.problems]).toEqual([0, ""]);
    expect(ended.output).toContain("linkage.travel");
  });

  it("refuses with status 2, findings on standard error and an empty output", async () => {
    const ended = await run(["calc", "linkage.travel"], '{"sied": "left"}');
    expect([ended.status, ended.output]).toEqual([2, ""]);
    const { findings } = JSON.parse(ended.problems) as { readonly findings: readonly unknown[] };
    expect(findings[0]).toMatchObject({ code: "unknown-key", path: "sied", hint: "The nearest known key is side." });
  });

  it("answers a batch line by line", async () => {
    const ended = await run(["calc", "--batch"], '{"id":"linkage.travel","input":{}}\n{"id":"none"}\n');
    expect([ended.status, ended.output.trimEnd().split("\n").length]).toEqual([0, 2]);
  });

  it("checks a family sheet and ends with 2 on one that is wrong, with 0 on one that is not", async () => {
    expect((await run(["family", "check", "-"], "{}")).status).toBe(2);
    const demo = join(repository, "src/demo/families/ouzel-saloon.json");
    expect(await run(["family", "check", demo], "")).toMatchObject({ status: 0, problems: "" });
  });

  it("says what it does not understand", async () => {
    const ended = await run(["clac"], "");
    expect([ended.status, ended.output]).toEqual([2, ""]);
    expect(ended.problems).toContain("calc");
  });
});
