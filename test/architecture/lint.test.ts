import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { repository } from "./source-files.ts";

const planted = [
  ["any", "export const twice = (x: any): number => 2 * x;\n", "noExplicitAny"],
  [
    "a promise that a value is there",
    "export const first = (x: readonly number[]): number => x[0]!;\n",
    "noNonNullAssertion",
  ],
  ["a name nobody uses", "const unused = 1;\nexport const used = 2;\n", "noUnusedVariables"],
  ["an import nobody uses", 'import { norm } from "./norm.ts";\n\nexport const used = 2;\n', "noUnusedImports"],
  ["a type imported as a value", 'import { Norm } from "./norm.ts";\n\nexport type Used = Norm;\n', "useImportType"],
  ["a word to the console", 'console.log("seen");\nexport const used = 2;\n', "noConsole"],
  [
    "an undeclared package",
    'import { x } from "no-such-package-here";\n\nexport const used = x;\n',
    "noUndeclaredDependencies",
  ],
  ["a comparison that converts", "export const same = (x: unknown): boolean => x == 1;\n", "noDoubleEquals"],
  ["another format", "export const twice = (x: number): number => { return 2 * x }\n", "format"],
] as const;

interface Diagnostic {
  readonly category: string;
  readonly location: { readonly path: string | { readonly file: string } };
}

describe("the linter", () => {
  let folder: string;
  let diagnostics: readonly string[];

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "lint-"));
    mkdirSync(join(folder, "src"));
    const settings = JSON.parse(readFileSync(join(repository, "biome.json"), "utf8")) as Record<string, unknown>;
    writeFileSync(join(folder, "biome.json"), `${JSON.stringify({ ...settings, vcs: { enabled: false } }, null, 2)}\n`);
    cpSync(join(repository, "package.json"), join(folder, "package.json"));
    planted.forEach(([, text], index) => {
      writeFileSync(join(folder, "src", `planted-${index}.ts`), text);
    });
    writeFileSync(join(folder, "src", "sound.ts"), "export const twice = (x: number): number => 2 * x;\n");
    const program = join(repository, "node_modules/@biomejs/biome/bin/biome");
    const ended = spawnSync(process.execPath, [program, "check", "--reporter=json", "src"], {
      cwd: folder,
      encoding: "utf8",
    });
    const report = JSON.parse(ended.stdout) as { readonly diagnostics: readonly Diagnostic[] };
    diagnostics = report.diagnostics.map(
      ({ category, location: { path } }) => `${typeof path === "string" ? path : path.file} ${category}`,
    );
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("has nothing against a sound file", () => {
    expect(diagnostics.filter((line) => line.startsWith("src/sound.ts"))).toEqual([]);
  });

  it.each(planted.map(([what, , rule], index) => ({ what, rule, index })))("catches $what", ({ rule, index }) => {
    const here = diagnostics.filter((line) => line.startsWith(`src/planted-${index}.ts`));
    expect(here.join("\n")).toContain(rule);
  });
});
