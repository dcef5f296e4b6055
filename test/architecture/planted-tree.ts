import { execFile } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { typeChecker } from "../../tools/type-checker.mjs";
import { repository } from "./source-files.ts";

const run = promisify(execFile);

/** A small copy of the program's shape under the same rules, into which offences are planted. */
export interface PlantedTree {
  readonly folder: string;
  readonly remove: () => void;
}

/** Every folder with its front door, and between them only imports that are allowed. */
const soundTree: Readonly<Record<string, string>> = {
  "src/quantity/index.ts": "export type Metres = number;\n",
  "src/numeric/index.ts": 'export { norm } from "./norm.ts";\nexport type { Length } from "./norm.ts";\n',
  "src/numeric/norm.ts":
    'import type { Metres } from "#quantity";\nexport type Length = Metres;\nexport const norm = (x: Length): Metres => Math.abs(x);\n',
  "src/vehicle/index.ts":
    'import { norm } from "#numeric";\nexport const wheel = norm(-1);\nexport type Wheel = typeof wheel;\n',
  "src/engines/linkage/index.ts":
    'import { wheel } from "#vehicle";\nexport { solveInside } from "./inside.ts";\nexport const solve = (): number => wheel;\n',
  "src/engines/linkage/inside.ts": "export const solveInside = (): number => 1;\n",
  "src/engines/ride/index.ts":
    'import { solve } from "#engines/linkage";\nexport const computeRide = (): number => solve();\n',
  "src/casework/index.ts":
    'import { solve } from "#engines/linkage";\nexport type Case = { readonly toe: number };\nexport const assess = (): Case => ({ toe: solve() });\n',
  "src/contract/index.ts":
    'import { assess } from "#casework";\nimport { z } from "zod";\nexport const wire = z.number();\nexport const answer = assess();\n',
  "src/drawing/index.ts":
    'import type { Case } from "#casework";\nimport { scaleLinear } from "d3-scale";\nexport const draw = (one: Case): number => scaleLinear()(one.toe);\n',
  "src/report/index.ts": 'import { draw } from "#drawing";\nexport const print = draw;\n',
  "src/records/index.ts":
    'import { readFileSync } from "node:fs";\nimport type { Case } from "#casework";\nexport const load = (path: string): Case => ({ toe: readFileSync(path).length });\n',
  "src/demo/index.ts": 'import { wheel } from "#vehicle";\nexport const demo = wheel;\n',
  "src/server/index.ts":
    'import { wire } from "#contract";\nimport { load } from "#records";\nexport const serve = { wire, load };\n',
  "src/cli/index.ts": 'import { wire } from "#contract";\nexport const say = wire;\n',
  "src/web/index.ts": 'import { assess } from "#casework";\nexport const page = (): string => String(assess().toe);\n',
};

const settings = [
  "package.json",
  "dependency-rules.cjs",
  "tsconfig.base.json",
  "tsconfig.core.json",
  "tsconfig.web.json",
];

const write = (folder: string, files: Readonly<Record<string, string>>): void => {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
};

/** Makes the tree with the planted files added to (or laid over) the sound ones; it lies inside the repository so that packages resolve. */
export const plantTree = (planted: Readonly<Record<string, string>>): PlantedTree => {
  const home = join(repository, ".cache", "architecture");
  mkdirSync(home, { recursive: true });
  const folder = mkdtempSync(join(home, "tree-"));
  for (const name of settings) cpSync(join(repository, name), join(folder, name));
  write(folder, soundTree);
  write(folder, planted);
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
};

/** One broken rule: which, in which file. */
export interface Offence {
  readonly rule: string;
  readonly from: string;
}

/** Standard output of a Node program of a package, whatever its exit status; throws where it printed nothing. */
const output = async (folder: string, args: readonly string[]): Promise<string> => {
  try {
    return (await run(process.execPath, args, { cwd: folder, maxBuffer: 64e6 })).stdout;
  } catch (ended) {
    const { stdout } = ended as { readonly stdout?: string };
    if (stdout === undefined || stdout === "") throw ended;
    return stdout;
  }
};

const binary = (path: string): string => join(repository, "node_modules", path);

/** What dependency-cruiser objects to in a tree. */
export const findOffences = async (folder: string): Promise<readonly Offence[]> => {
  const said = await output(folder, [
    binary("dependency-cruiser/bin/dependency-cruise.mjs"),
    "--config",
    "dependency-rules.cjs",
    "--output-type",
    "json",
    "src",
  ]);
  const { summary } = JSON.parse(said) as {
    readonly summary: {
      readonly violations: readonly { readonly from: string; readonly rule: { readonly name: string } }[];
    };
  };
  return summary.violations.map(({ from, rule }) => ({ rule: rule.name, from }));
};

/** Files of a tree the compiler objects to under one of the project settings, with the codes. */
export const findTypeOffences = async (folder: string, project: string): Promise<readonly Offence[]> => {
  const said = await output(folder, [binary(typeChecker()), "-b", project, "--pretty", "false"]).catch(
    (ended: { readonly stdout?: string }) => {
      if (ended.stdout === "") return "";
      throw ended;
    },
  );
  return [...said.matchAll(/^(src\/[^(]+)\([\d,]+\): error (TS\d+)/gm)].map(([, from, rule]) => ({
    rule: rule ?? "",
    from: from ?? "",
  }));
};
