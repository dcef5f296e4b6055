import { describe, expect, it } from "vitest";
import { parseTypedNumber, typedNumberTrouble } from "./parse-typed-number.ts";

const wheelbase = { low: 2200, high: 3400 };
const read = (text: string, bounds = {}): number | string => {
  const typed = parseTypedNumber(text, bounds);
  return typed.kind === "number" ? typed.value : typed.kind;
};

describe("a number as people write it", () => {
  it.each([
    ["30", 30],
    ["−30", -30],
    ["-30", -30],
    ["– 30", -30],
    ["+2.5", 2.5],
    ["2,5", 2.5],
    ["-2,25", -2.25],
    [",5", 0.5],
    ["5.", 5],
    ["0,125", 0.125],
    ["1 080", 1080],
    ["1\u2009080", 1080],
    ["1\u202f080", 1080],
    ["1\u00a0080,5", 1080.5],
    ["1'080", 1080],
    ["1’234’567.25", 1234567.25],
    ["1.234,5", 1234.5],
    ["1,234.5", 1234.5],
    ["1,234,567", 1234567],
    ["1.234.567", 1234567],
    ["12,3456", 12.3456],
    ["1234,567", 1234.567],
    ["-0", 0],
  ])("%j is %d", (text, value) => expect(read(text)).toBe(value));

  it.each([
    "high",
    "3 8 2",
    "38-2",
    ".",
    ",",
    "-",
    "1,2,3",
    "1,23,456",
    "12 34",
    "1e3",
    "1 080'000",
    "0 123",
    "٣",
    "2 510 mm",
  ])("%j is none", (text) => expect(read(text)).toBe("no-number"));

  it("nothing typed is nothing", () => expect(read(" \u00a0 ")).toBe("empty"));
});

describe("one mark before three digits", () => {
  it("is what the range leaves", () => {
    expect(read("2,510", wheelbase)).toBe(2510);
    expect(read("2.510", wheelbase)).toBe(2510);
    expect(read("24,350", { low: 4, high: 45 })).toBe(24.35);
    expect(read("−1,250", { low: -10, high: 10 })).toBe(-1.25);
  });

  it("is thousands where only whole numbers make sense", () => {
    expect(read("128,400", { low: 0, high: 3e6, whole: true })).toBe(128400);
    expect(read("128.400", { low: 0, high: 3e6, whole: true })).toBe(128400);
    expect(read("123456.7", { whole: true })).toBe("no-number");
  });

  it("is unclear by a comma where the range leaves both or neither, and decimal by a point", () => {
    for (const bounds of [{}, { low: 0, high: 5000 }, { low: 3000, high: 4000 }]) {
      expect(parseTypedNumber("1,234", bounds)).toEqual({ kind: "unclear", readings: [1234, 1.234] });
      expect(read("1.234", bounds)).toBe(1.234);
    }
  });

  it("is said with both readings", () => {
    expect(typedNumberTrouble("1,234", {}, "mm")).toBe(
      "may mean 1234 or 1.234 mm; write the one that is meant, with a point before decimals",
    );
    expect(typedNumberTrouble("abc", { whole: true }, "km")).toBe("give a whole number, in km");
    expect(typedNumberTrouble("2,510", wheelbase, "mm")).toBeNull();
  });
});
