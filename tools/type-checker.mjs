import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { repository } from "./changed.mjs";

/**
 * The type checker: the compiled one of TypeScript 7, which needs a third of the time, or TypeScript 6 on a machine it is
 * not made for. Version 6 stays for what reads programs through its interface (dependency-cruiser), which 7 has not.
 */
export const typeChecker = () => {
  const compiled = "typescript-native/bin/tsc";
  const runs = spawnSync(process.execPath, [join(repository, "node_modules", compiled), "--version"]).status === 0;
  return runs ? compiled : "typescript/bin/tsc";
};
