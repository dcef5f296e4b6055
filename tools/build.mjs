import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { areBundlesFresh, arePagesFresh, repository } from "./changed.mjs";

const runVite = (config) =>
  spawnSync(
    process.execPath,
    [join(repository, "node_modules/vite/bin/vite.js"), "build", "--config", config, "--logLevel", "warn"],
    { cwd: repository, stdio: ["ignore", "inherit", "inherit"] },
  ).status === 0;

/** Builds what is missing or older than its sources: the pages, then the command line and server. True where all is there. */
export const buildWhatIsStale = () => {
  if (!arePagesFresh()) {
    console.log("building the pages");
    if (!runVite("vite.config.ts")) return false;
  }
  if (!areBundlesFresh()) {
    console.log("building the command line and the server");
    if (!runVite("vite.node.config.ts")) return false;
  }
  return true;
};
