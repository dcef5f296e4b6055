import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../", import.meta.url));
const read = (path: string): string => readFileSync(join(root, path), "utf8");

/** Keys of the page: first cell of every row. */
const keys = read("docs/sources.md")
  .split("\n")
  .flatMap((line) => /^\| ([a-z0-9]+(?:-[a-z0-9]+)*) \|/.exec(line)?.[1] ?? [])
  .filter((key) => key !== "key");

const files = readdirSync(join(root, "src"), { recursive: true, encoding: "utf8" }).filter(
  (name) => /\.tsx?$/.test(name) && !name.includes(".test."),
);

/** A source given by its key alone, and a key that a comment says stands on the page. */
const given = /source: "([a-z0-9]+(?:-[a-z0-9]+)+)"/g;
const named =
  /(?:key ([a-z0-9]+(?:-[a-z0-9]+)*) in docs\/sources\.md|docs\/sources\.md, key ([a-z0-9]+(?:-[a-z0-9]+)*))/g;

describe("the sources page", () => {
  it("has every key once", () => {
    expect(keys.length).toBeGreaterThan(15);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });

  it("has every key the code names", () => {
    const used = files.flatMap((file) => {
      const text = read(join("src", file));
      return [...text.matchAll(given), ...text.matchAll(named)].map((m) => ({ file, key: m[1] ?? m[2] ?? "" }));
    });
    expect(used.length).toBeGreaterThan(0);
    expect(used.filter(({ key }) => !keys.includes(key))).toEqual([]);
  });

  it("says of every source how it is known", () => {
    const rows = read("docs/sources.md")
      .split("\n")
      .filter((line) => keys.some((key) => line.startsWith(`| ${key} |`)));
    const status = /(computed|read|from memory|invented|see there)/;
    expect(rows.filter((row) => !status.test(row.split("|").at(-2) ?? ""))).toEqual([]);
  });

  it("has every key of the linkage method", () => {
    const known = ["iso-8855", "rodrigues", "forward-derivatives", "implicit-function", "gum", "normal-probability"];
    const method = read("docs/method/linkage.md");
    for (const key of [...known, "check-values-geometry", "newton-continuation", "two-force-links", "thrust-sign"]) {
      expect(method).toContain(`\`${key}\``);
      expect(keys).toContain(key);
    }
  });
});
