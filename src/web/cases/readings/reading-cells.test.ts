import { expect, test } from "vitest";
import type { LookContent, StoredLook } from "#casework";
import { readingUnits } from "#contract";
import { ALL_CELLS, cellsOf, cellText, openAsked, parseCell, readAs, readTaken, twinCell } from "./reading-cells.ts";

const look = (sequence: number, place: string, content: LookContent): StoredLook => ({
  id: `01890a5d-ac96-774b-bcce-0000000000${String(sequence).padStart(2, "0")}`,
  car: "car-1",
  visit: "visit-1",
  place,
  content,
  loadState: "standing",
  instrument: null,
  photo: null,
  note: null,
  who: "MK",
  at: "2031-05-14T09:00:00Z",
  sequence,
  receivedAt: "2031-05-14T09:00:00Z",
  clockOff: false,
});

test("every field has a key of its own, heights come first", () => {
  expect(new Set(ALL_CELLS.map(({ key }) => key)).size).toBe(ALL_CELLS.length);
  expect(ALL_CELLS[0]?.reading.group).toBe("heights");
  expect(cellsOf("discs")).toHaveLength(32);
});

test("what is typed is kept in SI and shown as it was typed", () => {
  for (const [group, text] of [
    ["heights", "382"],
    ["pressures", "2.3"],
    ["alignment", "−1.25"],
    ["discs", "24.35"],
  ] as const) {
    const reading = cellsOf(group)[0]?.reading;
    if (reading === undefined) throw new Error("no such group");
    const value = parseCell(text.replace(".", ","), reading);
    expect(cellText({ quantity: reading.quantity, value: value ?? Number.NaN })).toBe(text);
  }
});

test("a figure goes into its unit and comes back as it was typed, however many digits it has", () => {
  for (const [group, text] of [
    ["pressures", "230"],
    ["pressures", "2.05"],
    ["heights", "382.5"],
    ["alignment", "0.07"],
  ] as const) {
    const reading = cellsOf(group)[0]?.reading;
    if (reading === undefined) throw new Error("no such group");
    const value = parseCell(text, reading) ?? Number.NaN;
    expect(String(readingUnits[reading.quantity].toOutside(value))).toBe(text);
    expect(Number(cellText({ quantity: reading.quantity, value }))).toBe(Number(text));
  }
});

test("a hyphen is shown as a minus, and another unit as the figure it is", () => {
  const camber = cellsOf("alignment")[0]?.reading;
  const pressure = cellsOf("pressures")[0]?.reading;
  const disc = cellsOf("discs")[0]?.reading;
  if (camber === undefined || pressure === undefined || disc === undefined) throw new Error("no such group");
  for (const text of ["-0.12", "−0.12", "–0,12°"])
    expect(cellText({ quantity: "camber", value: parseCell(text, camber) ?? Number.NaN })).toBe("−0.12");
  expect(parseCell("0°07'", camber)).toBeCloseTo(((7 / 60) * Math.PI) / 180, 12);
  expect(parseCell("32 psi", pressure)).toBeCloseTo(220_632.2, 0);
  expect(parseCell("0.95 in", disc)).toBeCloseTo(0.02413, 9);
  expect(readAs("32 psi", pressure)).toBe("32 psi is 2.206 bar");
  expect(readAs("-7'", camber)).toBe("−7' is −0.1167°");
  expect(readAs("2.3 bar", pressure)).toBeNull();
});

test("what is no number is not taken for one", () => {
  const reading = cellsOf("heights")[0]?.reading;
  if (reading === undefined) throw new Error("no heights");
  for (const text of ["high", "3 8 2", "38-2", "."]) expect(parseCell(text, reading)).toBeUndefined();
  expect(parseCell(" ", reading)).toBeNull();
});

test("a reading taken later counts before a mark that it was not taken", () => {
  const height = cellsOf("heights")[0];
  if (height === undefined) throw new Error("no heights");
  const { place } = height.reading;
  const marked = [look(1, place, { kind: "not-taken", quantity: "ride-height" })];
  expect(openAsked("heights", readTaken(marked))).toHaveLength(3);
  const taken = readTaken([
    ...marked,
    look(2, place, { kind: "reading", quantity: "ride-height", value: 0.382, u: 0.001, point: null }),
  ]);
  expect(taken.taken.get(height.key)?.value).toBe(0.382);
});

test("the other side of a field is the same field there", () => {
  const [left] = cellsOf("tread");
  const other = left === undefined ? null : twinCell(left);
  expect(ALL_CELLS.some(({ key }) => key === other)).toBe(true);
});
