import { expect, test } from "vitest";
import { readTravelSearch } from "../travel/travel-search.ts";
import { formatSearch, onlyWhatIsRead, parseSearch } from "./address.ts";

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

/** As the router does it: what a reader returns lies over what stands in the address. */
const asThePageHasIt = (address: string) => {
  const written = parseSearch(address);
  return { ...written, ...onlyWhatIsRead(readTravelSearch)(written) };
};

test("what a reader refuses does not reach the page as it was written", () => {
  const search = asThePageHasIt("?corner=nowhere&rise_mm=abc&lowered_mm=500&braking_n=2000&stranger=1");
  expect(search).toEqual({ braking_n: 2000 });
  expect(formatSearch(search)).toBe("?braking_n=2000");
});

test("what it reads comes back as it was", () => {
  const address = "?corner=rear-left&torn=rear-left/toe-link/inner-bush&rise_mm=-20";
  expect(formatSearch(asThePageHasIt(address))).toBe(address);
});
