import { expect, test } from "vitest";
import { formatMarks, parseMarks, withMark } from "./marks-in-address.ts";
import type { PositionMark } from "./position-mark.ts";

const MARKS = new Map<string, PositionMark>([
  ["rear-left/trailing-link/inner-bush", { kind: "torn", grade: 3 }],
  ["front-right/tie-rod/outer-joint", { kind: "loose", play: 0.0015 }],
  ["front-left/tie-rod/outer-joint", { kind: "loose", play: 0.001, assumed: true }],
  ["front-left/lower-arm/rear-bush", { kind: "firmer", factor: 2.5 }],
  ["front-left/lower-arm/front-bush", { kind: "firmer", hardness: { from: 55, to: 62.5 } }],
  ["rear-right/trailing-link/inner-bush", { kind: "firmer", hardness: { from: null, to: 90 } }],
  ["rear-left/toe-link/inner-bush", { kind: "firmer", hardness: { from: null, to: null } }],
  ["front-right/lower-arm/rear-bush", { kind: "fluid-gone" }],
  ["front-left/tyre", { kind: "sound" }],
  ["rear-left/disc/surface", { kind: "seen", signs: ["lip", "scored"] }],
]);

test("marks survive the way through the address", () => {
  const read = parseMarks(formatMarks(MARKS));
  expect(read.unread).toEqual([]);
  expect([...read.marks]).toEqual([...MARKS]);
});

test("a firmer part stands in the address by its factor or by the hardness of both", () => {
  expect(parseMarks("a/b:firmer-2~c/d:firmer-shore-55-65~e/f:firmer-shore-x-65")).toEqual({
    marks: new Map([
      ["a/b", { kind: "firmer", factor: 2 }],
      ["c/d", { kind: "firmer", hardness: { from: 55, to: 65 } }],
      ["e/f", { kind: "firmer", hardness: { from: null, to: 65 } }],
    ]),
    unread: [],
  });
  const wrong = ["a/b:firmer-shore-55", "c/d:firmer-shore-55-101", "e/f:firmer-shore--65", "g/h:firmer-shore-y-65"];
  expect(parseMarks(wrong.join("~")).unread).toEqual(wrong);
});

test("an entry that names no mark is given back, the others are kept", () => {
  const read = parseMarks(
    "a/b:torn-4~c/d:torn-2~e/f:loose-99~g/h~i/j:firmer-0.5~:torn-1~k/l:seen-~m/n:seen-lip,shiny~o/p:seen-lip,lip",
  );
  expect([...read.marks.keys()]).toEqual(["c/d"]);
  expect(read.unread).toEqual([
    "a/b:torn-4",
    "e/f:loose-99",
    "g/h",
    "i/j:firmer-0.5",
    ":torn-1",
    "k/l:seen-",
    "m/n:seen-lip,shiny",
    "o/p:seen-lip,lip",
  ]);
});

test("taking a mark off leaves the others", () => {
  const left = withMark(MARKS, "front-left/tyre", null);
  expect(left.has("front-left/tyre")).toBe(false);
  expect(left.size).toBe(MARKS.size - 1);
});
