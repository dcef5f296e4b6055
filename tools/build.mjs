import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { areBundlesFresh, arePagesFresh, repository } from "./changed.mjs";

const runVite = (config, logLevel) =>
  spawnSync(
    process.execPath,
    [join(repository, "node_modules/vite/bin/vite.js"), "build", "--config", config, "--logLevel", logLevel],
    // Whatever the caller's own NODE_ENV (a test runner sets one), what is built is what is shipped.
    {
      cwd: repository,
      env: { ...process.env, NODE_ENV: "production" },
      stdio: ["ignore", "inherit", "inherit"],
    },
  ).status === 0;

/** Builds what is missing or older than its sources: the pages, then the command line and server. True where all is there. */
export const buildWhatIsStale = (logLevel = "warn") => {
  if (!arePagesFresh()) {
    console.log("building the pages");
    if (!runVite("vite.config.ts", logLevel)) return false;
  }
  if (!areBundlesFresh()) {
    console.log("building the command line and the server");
    if (!runVite("vite.node.config.ts", logLevel)) return false;
  }
  return true;
};

if (process.argv[1] === fileURLToPath(import.meta.url) && !buildWhatIsStale()) process.exitCode = 1;
