#!/usr/bin/env node
import { join } from "node:path";
import { demandNode } from "../tools/node-version.mjs";

demandNode();
const { areBundlesFresh, repository } = await import("../tools/changed.mjs");
const bundled = areBundlesFresh();
if (!bundled) {
  const { register } = await import("tsx/esm/api").catch(() => {
    console.error("The packages are not installed yet. Run npm ci (or npm start) first.");
    process.exit(1);
  });
  register();
}
const { runCommandLine } = await import(bundled ? "../dist/node/command-line.js" : "../src/cli/index.ts");

process.stdout.on("error", (problem) => {
  if (problem.code !== "EPIPE") throw problem;
  process.exit(0);
});
process.exitCode = await runCommandLine(process.argv.slice(2), {
  terminal: { input: process.stdin, output: process.stdout, problems: process.stderr },
  dataFolder: process.env.DATA_DIR ?? join(repository, "data"),
  serve: async (options) => {
    const { serve } = await import(bundled ? "../dist/node/server.js" : "../src/server/index.ts");
    await serve(repository, options);
  },
});
