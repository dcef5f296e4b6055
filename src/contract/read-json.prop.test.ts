import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readJson } from "./read-json.ts";

const runs = { seed: 3, numRuns: 500 };

/** JSON.parse keeps the last of doubled keys and so do we; where it throws, the text is not readable. */
const parsedByTheLanguage = (text: string): { readonly value: unknown } | null => {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
};

describe("reading JSON, whatever comes", () => {
  it("gives back every document that was written", () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.nat(4), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        expect(readJson(text)).toEqual({ readable: true, value: JSON.parse(text), findings: [] });
      }),
      runs,
    );
  });

  it("agrees with the language's own parser on damaged documents", () => {
    const damaged = fc
      .tuple(
        fc.jsonValue({ maxDepth: 3 }),
        fc.nat(),
        fc.constantFrom("", ",", "}", "]", '"', "\\", "1", "-", ".", "e", "\u0000", "x"),
      )
      .map(([value, place, letter]) => {
        const text = JSON.stringify(value);
        const at = place % (text.length + 1);
        return text.slice(0, at) + letter + text.slice(at + (letter === "" ? 1 : 0));
      });
    fc.assert(
      fc.property(damaged, (text) => {
        const ours = readJson(text);
        const theirs = parsedByTheLanguage(text);
        expect(ours.readable).toBe(theirs !== null);
        if (ours.readable) expect(ours.value).toEqual(theirs?.value);
        else expect(ours.findings).toHaveLength(1);
      }),
      runs,
    );
  });
});
