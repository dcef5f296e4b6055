import { expect, test } from "vitest";
import type { SuspectWord } from "#casework";
import { saidOf, sayOfSuspect } from "./suspect-word.ts";

const word = (cause: string, said: SuspectWord["word"]): SuspectWord => ({
  cause,
  word: said,
  reason: null,
  by: "MK",
  at: "2031-05-14T09:00:00Z",
});

test("what is said of a suspect is added, and what was said before stays on record", () => {
  const first = sayOfSuspect(null, word("bar-link", "ruled-out"));
  const second = sayOfSuspect(sayOfSuspect(first, word("top-mount", "accepted")), word("bar-link", "open"));
  expect(second.suspects).toHaveLength(3);
  expect(saidOf(second, "bar-link").map((w) => w.word)).toEqual(["open", "ruled-out"]);
  expect(saidOf(null, "bar-link")).toEqual([]);
});
