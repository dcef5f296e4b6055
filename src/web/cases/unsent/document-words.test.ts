import { expect, test } from "vitest";
import { keyWords, valueWords } from "./document-words.ts";

test("keys are words with their unit", () => {
  expect(keyWords("odometer_km")).toBe("Odometer, km");
  expect(keyWords("identity_number")).toBe("Identity number");
});

test("values are words, lists say each of their items", () => {
  expect(valueWords(null)).toBe("nothing");
  expect(valueWords([])).toBe("nothing");
  expect(valueWords(true)).toBe("yes");
  expect(valueWords(["enquiry", "job-card"])).toBe("Enquiry; Job card");
  expect(valueWords([{ symptom: "spongy-pedal", side: "left", since: null }])).toBe("symptom Spongy pedal, side left");
});
