import { execFileSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

export const repository = fileURLToPath(new URL("../../", import.meta.url));

/** Every file below a folder, as paths with forward slashes relative to `from`. */
export const listFiles = (folder: string, from: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile())
    .map((path) => relative(from, path).split(sep).join("/"));

/** Files under version control and those about to be: what a clone would hold. */
export const listTracked = (): readonly string[] =>
  execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard", "-z"], { cwd: repository })
    .toString("utf8")
    .split("\0")
    .filter((path) => path !== "");

/** Folders of src that know neither clock, chance, page nor machine. */
export const coreFolders = [
  "quantity",
  "numeric",
  "vehicle",
  "engines",
  "casework",
  "contract",
  "drawing",
  "report",
  "demo",
];
