import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { listFiles, listTracked, repository } from "./source-files.ts";

const read = (file: string): string => readFileSync(join(repository, file), "utf8");
const sources = listFiles(join(repository, "src"), repository).filter((file) => /\.tsx?$/.test(file));
const tracked = listTracked();
const texts = tracked.filter((file) => !/\.(png|jpg|woff2|ttf|pdf|ico)$/.test(file));

/** Put together from halves, so that this file does not hold what it looks for. */
const foreign: readonly [what: string, pattern: RegExp][] = [
  [
    "path of some machine",
    new RegExp(`(^|[\\s"'\`(=:])/(${["work", "root", "home/[^/\\s]+", "Users/[^/\\s]+"].join("|")})/`, "m"),
  ],
  ["registry host", new RegExp(["registry", "\\.", "(npmjs|yarnpkg|npmmirror)"].join(""))],
];

describe("the repository", () => {
  it("has no source file over 400 lines", () => {
    expect(sources.filter((file) => read(file).split("\n").length > 401)).toEqual([]);
  });

  it("names files for what they hold", () => {
    const vague = /^(utils?|helpers?|common|misc|shared|stuff)([.-]|$)/i;
    const parts = sources.flatMap((file) => file.split("/").map((part) => ({ file, part })));
    expect(parts.filter(({ part }) => vague.test(part)).map(({ file }) => file)).toEqual([]);
  });

  it("names source files in kebab-case", () => {
    expect(sources.filter((file) => !/^[a-z0-9-]+(\.(test|prop\.test|d))?\.tsx?$/.test(basename(file)))).toEqual([]);
  });

  it.each(foreign)("holds no %s", (_, pattern) => {
    expect(texts.filter((file) => pattern.test(read(file)))).toEqual([]);
  });

  it("the patterns for foreign places catch what they are for", () => {
    const [place, host] = foreign.map(([, pattern]) => pattern);
    expect(place?.test(`open("${"/ro"}ot/x")`)).toBe(true);
    expect(place?.test(`cd ${"/ho"}me/someone/x`)).toBe(true);
    expect(place?.test(["http://127.0.0.1", "work", "x and src", "root", "x"].join("/"))).toBe(false);
    expect(host?.test(`https://${"regis"}try.npmjs.org/x`)).toBe(true);
  });

  it("has a lock file without addresses, for exactly the packages of package.json", () => {
    const lock = JSON.parse(read("package-lock.json")) as {
      readonly packages: Record<string, Record<string, unknown>>;
    };
    const packages = JSON.parse(read("package.json")) as Record<string, unknown>;
    expect(Object.entries(lock.packages).filter(([, entry]) => "resolved" in entry && entry.link !== true)).toEqual([]);
    expect(lock.packages[""]).toMatchObject({
      dependencies: packages.dependencies,
      devDependencies: packages.devDependencies,
    });
  });

  it("pins every package to one version", () => {
    const { dependencies, devDependencies } = JSON.parse(read("package.json")) as Record<
      string,
      Record<string, string>
    >;
    const pinned = /^(npm:[a-z-]+@)?\d+\.\d+\.\d+$/;
    expect(
      Object.entries({ ...dependencies, ...devDependencies }).filter(([, version]) => !pinned.test(version)),
    ).toEqual([]);
  });
});
