import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { codes } from "../../src/contract/codes.ts";
import { codeTablePath, formatCodeTable } from "../../tools/code-table.ts";
import { findCodeUses } from "./finding-codes.ts";

describe("finding codes", () => {
  const uses = findCodeUses();

  it("each code the source uses stands in the table", () => {
    expect(uses.length).toBeGreaterThan(10);
    expect(uses.filter(({ code }) => !(code in codes))).toEqual([]);
  });

  it("each code of the table is used", () => {
    const used = new Set(uses.map(({ code }) => code));
    expect(Object.keys(codes).filter((code) => !used.has(code))).toEqual([]);
  });

  it("codes are lower-case words with hyphens", () => {
    expect(Object.keys(codes).filter((code) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([]);
  });

  it("docs/codes.md is the table (npm run codes writes it)", () => {
    expect(readFileSync(codeTablePath, "utf8")).toBe(formatCodeTable());
  });
});
