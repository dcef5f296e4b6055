import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseVisitText } from "./index.ts";

const example = JSON.parse(readFileSync(new URL("../../../docs/examples/visit.json", import.meta.url), "utf8"));
const seed = 20_310_514;

/** Every place in a value: the way to it from the top. */
const placesIn = (value: unknown, at: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] =>
  typeof value !== "object" || value === null
    ? [at]
    : [
        at,
        ...Object.entries(value).flatMap(([key, inner]) =>
          placesIn(inner, [...at, Array.isArray(value) ? Number(key) : key]),
        ),
      ];

/** A copy with another value at one place. */
const replaced = (value: unknown, [key, ...rest]: readonly (string | number)[], by: unknown): unknown => {
  if (key === undefined) return by;
  if (Array.isArray(value)) return value.map((one, i) => (i === key ? replaced(one, rest, by) : one));
  const object = value as Readonly<Record<string, unknown>>;
  return { ...object, [key]: replaced(object[key], rest, by) };
};

describe("a spoilt visit file", () => {
  it("is read or refused with findings, whatever stands in whichever place; nothing is thrown", () => {
    const places = placesIn(example);
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.jsonValue(), (place, value) => {
        const parsed = parseVisitText(JSON.stringify(replaced(example, place, value)));
        if ("findings" in parsed) expect(parsed.findings.length).toBeGreaterThan(0);
        else expect(parsed.value.record.looks.every((look) => look.sequence > 0)).toBe(true);
      }),
      { seed, numRuns: 300 },
    );
  });

  it("that is cut anywhere is refused", () => {
    const text = JSON.stringify(example);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: text.length - 1 }), (end) => {
        expect("findings" in parseVisitText(text.slice(0, end))).toBe(true);
      }),
      { seed, numRuns: 100 },
    );
  });
});
