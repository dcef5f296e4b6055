/**
 * Reads TypeScript as the build does: types taken off and nothing put in. The loader of the other tools gives every closure
 * its name when it is made, which took a fifth of the time of the figures measured here and is in no program that ships.
 */
import { register } from "node:module";

const loader = `
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { transformWithOxc } from "vite";

export async function load(url, context, next) {
  if (!url.endsWith(".ts")) return next(url, context);
  const path = fileURLToPath(url);
  const { code } = await transformWithOxc(await readFile(path, "utf8"), path, { sourcemap: false });
  return { format: "module", source: code, shortCircuit: true };
}
`;
register(
  `data:text/javascript,${encodeURIComponent(loader.replace('"vite"', JSON.stringify(import.meta.resolve("vite"))))}`,
);
