import { expect, test } from "vitest";
import { faultOfMark, gradeOfMark, type PositionMark, withSign } from "./position-mark.ts";

test("any play of a ball joint asks for repair first, large play for not driving", () => {
  expect(gradeOfMark({ kind: "loose", play: 0.0005 }, "ball-joint")).toBe(3);
  expect(gradeOfMark({ kind: "loose", play: 0.01 }, "ball-joint")).toBe(4);
});

test("of several signs the worst gives the grade", () => {
  expect(gradeOfMark({ kind: "seen", signs: ["film-below-seat"] }, "damper")).toBe(1);
  expect(gradeOfMark({ kind: "seen", signs: ["film-below-seat", "wet-streams", "rebounds-differ"] }, "damper")).toBe(3);
});

test("what could not be reached has no grade and stands alone", () => {
  const mark = withSign({ kind: "seen", signs: ["lip", "scored"] }, "cannot-reach");
  expect(mark).toEqual({ kind: "seen", signs: ["cannot-reach"] });
  expect(mark === null ? 0 : gradeOfMark(mark, "disc")).toBeNull();
  expect(withSign(mark, "lip")).toEqual({ kind: "seen", signs: ["lip"] });
});

test("a second tap takes a sign off, the last one the mark", () => {
  const two: PositionMark = { kind: "seen", signs: ["lip", "scored"] };
  expect(withSign(two, "lip")).toEqual({ kind: "seen", signs: ["scored"] });
  expect(withSign({ kind: "seen", signs: ["scored"] }, "scored")).toBeNull();
});

test("nothing is computed from a sign", () => {
  expect(faultOfMark({ kind: "seen", signs: ["separated"] })).toBeNull();
});
