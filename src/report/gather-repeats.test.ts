import { expect, it } from "vitest";
import { gatherRepeats } from "./gather-repeats.ts";
import type { RemedyLine } from "./owners-page-words.ts";

const row = (number: number, waiting: string): RemedyLine => ({
  number,
  grade: 2,
  close: false,
  positions: [],
  label: "",
  found: [],
  sentence: "",
  waiting,
  cents: null,
  price: "",
  agreed: [],
  advisedKm: null,
  lasts: null,
});

it("says once, with the numbers, what several rows say in the same words; short words and prices stay", () => {
  const same = "It was found worn; the figures are those of a sound part of its distance.";
  const { lines, notes } = gatherRepeats([
    row(1, `Now. Waiting costs 384.71 EUR more on average. ${same}`),
    row(2, `Now. Waiting costs 12.30 EUR more on average. ${same}`),
    row(3, `Now. ${same}`),
    row(4, "Now. The price is without a part that is not on file, and so on."),
  ]);
  expect(lines.map(({ waiting }) => waiting)).toEqual([
    "Now. Waiting costs 384.71 EUR more on average.",
    "Now. Waiting costs 12.30 EUR more on average.",
    "Now.",
    "Now. The price is without a part that is not on file, and so on.",
  ]);
  expect(notes).toEqual([`Of numbers 1, 2 and 3: ${same}`]);
});
