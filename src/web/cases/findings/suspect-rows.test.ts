import { expect, test } from "vitest";
import type { CarSuspect, CarSuspects } from "#casework";
import { splitSuspects } from "./suspect-rows.tsx";

const suspect = (cause: string, cures: number, there: number, word: string | null = null): CarSuspect =>
  ({ cause, cures, there, word: word === null ? null : { word } }) as unknown as CarSuspect;
const told = (...suspects: readonly CarSuspect[]): readonly string[] =>
  splitSuspects({ suspects } as unknown as CarSuspects).told.map(({ cause }) => cause);

test("with two at once the causes are named by the chance that they are there, and stay when one is accepted", () => {
  const [link, bush, rest] = [
    suspect("link", 0.001, 0.97),
    suspect("bush", 0.002, 0.95),
    suspect("rest", 0.0005, 0.04),
  ];
  expect(told(rest, bush, link)).toEqual(["link", "bush", "rest"]);
  expect(told(rest, suspect("bush", 0.3, 1, "accepted"), link)).toEqual(["bush", "link", "rest"]);
});

test("all causes have a row of their own where that is asked for, however small their chance", () => {
  const many = Array.from({ length: 9 }, (_, i) => suspect(`cause-${i}`, 0.1 - i / 100, 0.2));
  const split = (isAll: boolean) => splitSuspects({ suspects: many }, isAll);
  expect([split(false).told.length, split(false).others.length]).toEqual([6, 3]);
  expect([split(true).told.length, split(true).others.length]).toEqual([9, 0]);
});

test("a likely cure stands before what is only there", () => {
  expect(told(suspect("there", 0.001, 0.9), suspect("cure", 0.5, 0.6))).toEqual(["cure", "there"]);
});
