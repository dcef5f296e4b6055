import { describe, expect, it } from "vitest";
import type { Family } from "#vehicle";
import { demoFamilies, demoFamilySheets } from "./demo-families.ts";

const isNamed = (sheet: unknown): sheet is Family => typeof sheet === "object" && sheet !== null && "id" in sheet;

describe("the demo families", () => {
  it("are handed to the reader one by one and kept under their own ids", () => {
    const read = demoFamilies((sheet) => {
      if (!isNamed(sheet)) throw new Error("a demo sheet without an id");
      return { family: sheet };
    });
    expect(read.map(({ id }) => id)).toEqual(Object.keys(demoFamilySheets));
  });

  it("are not handed on where the reader finds something wrong", () => {
    const finding = { code: "missing-key", path: "front", got: "nothing", needed: "an axle", hint: "" };
    expect(() => demoFamilies(() => ({ findings: [finding] }))).toThrow(/siskin-coupe is wrong.*missing-key/);
  });
});
