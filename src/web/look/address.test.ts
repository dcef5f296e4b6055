import { expect, test } from "vitest";
import { formatSearch, parseSearch } from "./address.ts";

test("marks stay readable in the address and come back as they were", () => {
  const search = {
    marks: "rear-left/toe-link/inner-bush:torn-3~front-left/tyre:sound",
    at: "front-left/tyre",
    braking_n: 2000,
  };
  const written = formatSearch(search);
  expect(written).toContain("marks=rear-left/toe-link/inner-bush:torn-3~front-left/tyre:sound");
  expect(parseSearch(written)).toEqual({ ...search, braking_n: "2000" });
});

test("what has another meaning in an address is written out", () => {
  const search = { at: "a&b=c?#d e%" };
  expect(parseSearch(formatSearch(search))).toEqual(search);
});

test("nothing chosen leaves no search part", () => {
  expect(formatSearch({ marks: "", at: undefined })).toBe("");
});
