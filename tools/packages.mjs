import { spawnSync } from "node:child_process";
import { existsSync, realpathSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { repository } from "./changed.mjs";

const installed = join(repository, "node_modules", ".package-lock.json");
const lock = join(repository, "package-lock.json");

/** npm as it was started, or the one beside this Node, or the one on the path. */
const npmCommand = () => {
  const beside = join(dirname(process.execPath), "..", "lib", "node_modules", "npm", "bin", "npm-cli.js");
  const script = [process.env.npm_execpath, beside].find((path) => path?.endsWith(".js") && existsSync(path));
  return script === undefined ? ["npm"] : [process.execPath, script];
};

/**
 * The environment npm is run in. Packages compiled here need Node's headers; where they lie beside this Node, the
 * compiler is pointed at them, so that it fetches none.
 */
const npmEnvironment = () => {
  const nodeFolder = dirname(dirname(realpathSync(process.execPath)));
  if (!existsSync(join(nodeFolder, "include", "node", "node_version.h"))) return process.env;
  return { ...process.env, npm_config_nodedir: nodeFolder };
};

/** Installs the packages of the lock file when they are missing or older than it; ends the program where that fails. */
export const installPackages = () => {
  if (existsSync(installed) && statSync(installed).mtimeMs >= statSync(lock).mtimeMs) return;
  console.log("installing the packages of package-lock.json (npm ci); compiling the database takes some minutes");
  const [command, ...first] = npmCommand();
  const run = spawnSync(command, [...first, "ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: repository,
    env: npmEnvironment(),
    stdio: ["ignore", "ignore", "inherit"],
    shell: process.platform === "win32" && first.length === 0,
  });
  if (run.status === 0) return;
  console.error("The packages could not be installed; npm says why above.");
  process.exit(1);
};
