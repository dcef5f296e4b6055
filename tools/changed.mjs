import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const repository = fileURLToPath(new URL("../", import.meta.url));

/** Time of the newest change below a file or folder, in milliseconds; `leave` says which names do not count. */
export const newestChange = (path, leave = () => false) => {
  const entry = statSync(path);
  if (!entry.isDirectory()) return entry.mtimeMs;
  let newest = 0;
  for (const name of readdirSync(path)) {
    if (!leave(name)) newest = Math.max(newest, newestChange(join(path, name), leave));
  }
  return newest;
};

/** True where a built file is there and no source has changed since. */
export const isFresh = (built, sources, leave) => {
  const target = join(repository, built);
  if (!existsSync(target)) return false;
  const made = statSync(target).mtimeMs;
  return sources.every((source) => newestChange(join(repository, source), leave) <= made);
};

const isTest = (name) => /\.test\.tsx?$/.test(name);
const settings = ["package.json", "package-lock.json"];

/** True where the built pages are as new as what they are built from. */
export const arePagesFresh = () =>
  isFresh("dist/web/index.html", ["src", "vite.config.ts", "docs/sources.md", ...settings], isTest);

/** True where the bundled command line and server are as new as what they are built from. */
export const areBundlesFresh = () =>
  isFresh(
    "dist/node/command-line.js",
    ["src", "vite.node.config.ts", ...settings],
    (name) => isTest(name) || name === "web",
  );
