import { describe, expect, it } from "vitest";
import { readJson } from "./read-json.ts";

const codesOf = (text: string): readonly string[] => readJson(text).findings.map(({ code, path }) => `${code} ${path}`);

describe("reading JSON", () => {
  it.each([
    ["null"],
    ["-0.5e-3"],
    ['"a\\n\\u00d8 ⌀"'],
    ['{"a": [1, {"b": true}], "": [], "c": {}}'],
    [" \t\r\n[ 1 , 2 ]\n"],
  ])("reads %s like the language does", (text) => {
    expect(readJson(text)).toEqual({ readable: true, value: JSON.parse(text), findings: [] });
  });

  it("skips a byte order mark", () => {
    expect(readJson("\uFEFF{}")).toMatchObject({ readable: true, value: {} });
  });

  it("keeps a key that names the prototype an ordinary key", () => {
    const reading = readJson('{"__proto__": {"polluted": 1}, "constructor": 2}');
    if (!reading.readable) throw new Error("not readable");
    expect(Object.keys(reading.value as object)).toEqual(["__proto__", "constructor"]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("says every NaN, infinity and doubled key with its path and reads on", () => {
    const text = '{"a": NaN, "b": [1, -Infinity, 1e999], "c": {"d": 1, "d": 2}}';
    expect(readJson(text).readable).toBe(true);
    expect(codesOf(text)).toEqual([
      "not-a-number a",
      "not-a-number b[1]",
      "number-too-large b[2]",
      "duplicate-key c.d",
    ]);
  });

  it.each([
    ["", "no-input ", ""],
    ["  \n ", "no-input ", ""],
    ['{"a": 1,}', "not-json ", "A comma stands before the closing bracket."],
    ["[1, 2,]", "not-json [2]", "A comma or colon stands before the closing bracket."],
    ["{'a': 1}", "not-json ", "JSON uses double quotes."],
    ['{"a": .5}', "not-json a", "JSON numbers are written like -0.5, 12 or 1.5e-3."],
    ['{"a": 01}', "not-json a", "JSON numbers are written like -0.5, 12 or 1.5e-3."],
    ['{"a": 0x10}', "not-json a", "JSON numbers are written like -0.5, 12 or 1.5e-3."],
    ['{"a": 1} 2', "not-json ", "One JSON value stands alone."],
    ['{"a": "x', "not-json a", "The text that begins at line 1, column 7 never ends."],
    ['{"a": /* no */ 1}', "not-json a", "JSON has no comments."],
    ['"a\nb"', "not-json ", "Write a line end inside text as \\n."],
    ['{"a": undefined}', "not-json a", ""],
    ["[".repeat(65), `too-deep `, "It begins at line 1, column 65."],
  ])("refuses %j", (text, code, hint) => {
    const reading = readJson(text);
    expect(reading.readable).toBe(false);
    expect(codesOf(text)).toEqual([code]);
    expect(reading.findings[0]?.hint).toBe(hint);
  });

  it("names line and column", () => {
    expect(readJson('{\n  "a": 1\n  "b": 2\n}').findings[0]?.got).toBe('"\\"" at line 3, column 3');
  });

  it("stops at more values than any input has", () => {
    const reading = readJson(`{"rows": [${"0,".repeat(200_000)}0]}`);
    expect(reading).toMatchObject({ readable: false, findings: [{ code: "too-many-values", path: "rows" }] });
  });
});
