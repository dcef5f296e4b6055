import { describe, expect, it } from "vitest";
import { parseTyreSize } from "./tyre-size.ts";

describe("parseTyreSize", () => {
  // Diameters: 2 x width x aspect / 100 + rim x 25.4 mm, computed by hand.
  it.each([
    ["225/45 R17", 634.3],
    ["225/40R18", 637.2],
    ["245/40 ZR19 98Y", 678.6],
    ["205/55 R 16", 631.9],
    ["P195/65 R15 91H", 634.5],
  ])("reads %s as %d mm across", (size, diameter) => {
    expect((parseTyreSize(size)?.freeRadius ?? 0) * 2000).toBeCloseTo(diameter, 9);
  });

  it("reads width, aspect and rim", () => {
    expect(parseTyreSize("225/50 R17")).toEqual({
      width: 0.225,
      aspect: 0.5,
      rimDiameter: expect.closeTo(0.4318, 15),
      freeRadius: expect.closeTo(0.3284, 15),
    });
  });

  it.each([
    "",
    "225",
    "225-50-17",
    "50/225 R17",
    "2255/50 R17",
    "225/50 R77",
    "225/05 R17",
    "nineteen",
    "205/55 R1",
    "225/50 R17/255/45 R17",
  ])("does not read %j", (size) => {
    expect(parseTyreSize(size)).toBeNull();
  });
});
