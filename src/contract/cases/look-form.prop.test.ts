import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Look } from "#casework";
import { formatArchiveLine, parseArchiveLine } from "./archive-file.ts";
import { parseLookBatch } from "./look-batch.ts";
import { formatLook } from "./look-form.ts";
import { plausibleReadings } from "./plausible-readings.ts";
import { quantityNames, readingUnits } from "./reading-unit.ts";

const seed = 20_310_514;

const words = fc.string({ minLength: 1, maxLength: 30, unit: "grapheme" }).map((text) => `w${text}`.trim());
const uuid = fc.uuid({ version: 7 });

/** A reading as somebody types it: a plausible figure of a few decimals in the unit of its key. */
const reading = fc
  .record({
    quantity: fc.constantFrom(...quantityNames),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    u: fc.integer({ min: 0, max: 5000 }),
    decimals: fc.integer({ min: 0, max: 6 }),
    point: fc.option(words),
  })
  .map(({ quantity, share, u, decimals, point }) => {
    const { low, high } = plausibleReadings[quantity];
    const { toInside } = readingUnits[quantity];
    const typed = Math.min(high, Math.max(low, Number((low + share * (high - low)).toFixed(decimals))));
    return { kind: "reading" as const, quantity, value: toInside(typed), u: toInside(u / 1000), point };
  });

const look: fc.Arbitrary<Look> = fc.record({
  id: uuid,
  car: fc.constantFrom("car-1", "c0"),
  visit: fc.constantFrom("visit-1", "2031-05-14-a"),
  place: fc.constantFrom("front-left/lower-arm/ball-joint", "rear-right/tyre/tread"),
  content: fc.oneof(
    reading,
    fc.constant({ kind: "signs" as const, signs: ["deep-cracks" as const, "oil-trace" as const] }),
    fc.constant({ kind: "nothing-seen" as const }),
    fc.record({ kind: fc.constant("not-taken" as const), quantity: fc.option(fc.constantFrom(...quantityNames)) }),
    fc.record({ kind: fc.constant("withdrawn" as const), look: uuid }),
  ),
  loadState: fc.option(fc.constantFrom("standing" as const, "hanging" as const, "driving" as const)),
  instrument: fc.option(fc.constantFrom("calliper", "dial-gauge")),
  photo: fc.option(fc.constant("0123456789abcdef".repeat(4))),
  note: fc.option(fc.string({ maxLength: 200, unit: "grapheme" })),
  who: words,
  at: fc.constantFrom("2031-05-14T09:30:00+02:00", "2031-05-14T09:30:00.123Z"),
});

const keepable = (text: string | null): boolean =>
  text === null || (!text.includes("\u0000") && !/\p{Surrogate}/u.test(text));

describe("looks in JSON", () => {
  it("come back as they went out, to the double", () => {
    fc.assert(
      fc.property(fc.array(look, { minLength: 1, maxLength: 5 }), (looks) => {
        fc.pre(looks.every(({ note, who }) => keepable(note) && keepable(who)));
        const parsed = parseLookBatch(JSON.stringify({ looks: looks.map(formatLook) }));
        expect(parsed).toEqual({ value: looks.map((one) => ({ look: one })) });
      }),
      { seed, numRuns: 300 },
    );
  });

  it("come back from a line of an export as they went out", () => {
    fc.assert(
      fc.property(look, fc.boolean(), (one, clockOff) => {
        fc.pre(keepable(one.note) && keepable(one.who));
        const line = { kind: "look" as const, look: { ...one, receivedAt: "2031-05-14T09:30:00.000Z", clockOff } };
        expect(parseArchiveLine(formatArchiveLine(line))).toEqual({ value: line });
      }),
      { seed, numRuns: 300 },
    );
  });

  it("whatever is sent, a batch is answered and nothing is thrown", () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom("looks", "look", "id"), (value, key) => {
        const parsed = parseLookBatch(JSON.stringify({ [key]: value }));
        if ("findings" in parsed) expect(parsed.findings.length).toBeGreaterThan(0);
        else expect(parsed.value.every((entry) => "look" in entry || entry.findings.length > 0)).toBe(true);
      }),
      { seed, numRuns: 500 },
    );
  });
});
