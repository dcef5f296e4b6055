import { expect, test } from "vitest";
import { dueWords, sinceWords } from "./wait-words.ts";

test("a wait of today is told by its hour, an older one by its days", () => {
  expect(sinceWords("2031-05-14T09:20:00+02:00", "2031-05-14")).toBe("since 09:20");
  expect(sinceWords("2031-05-13", "2031-05-14")).toBe("since yesterday");
  expect(sinceWords("2031-04-30", "2031-05-02")).toBe("for 2 days");
});

test("what is due is told from today on, and when it is past", () => {
  expect(dueWords(null, "2031-05-14")).toBe("");
  expect(dueWords("2031-05-14T14:00:00Z", "2031-05-14")).toBe("due 14:00");
  expect(dueWords("2031-05-17", "2031-05-14")).toBe("due in 3 days");
  expect(dueWords("2031-05-12", "2031-05-14")).toBe("due 2 days ago");
});
