import { expect, test } from "vitest";
import { renamedText } from "./renamed-text.ts";

test("only the name of the whole is replaced, to the letter", () => {
  const text =
    '{ "links": [{"name": "toe-link"}], "note": "so called \\"name\\": \\"x\\"",\n\t"name" : "Old \\"one\\"" , "kerb_mass_kg": 1450.0 }\n';
  expect(renamedText(text, 'New "two"')).toBe(text.replace('"Old \\"one\\""', '"New \\"two\\""'));
});

test("what has no name of its own is left alone", () => {
  expect(renamedText('{"front": {"name": "front"}}', "x")).toBeNull();
  expect(renamedText("[]", "x")).toBeNull();
});
