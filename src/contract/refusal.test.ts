import { describe, expect, it } from "vitest";
import { z } from "zod";
import { readJson } from "./read-json.ts";
import { parseReading, parseWire } from "./refusal.ts";

const point = z.tuple([z.number(), z.number(), z.number()]);
const seat = z.discriminatedUnion("on", [
  z.strictObject({ on: z.literal("knuckle"), moving_mm: point }),
  z.strictObject({ on: z.literal("link"), link: z.string(), fraction: z.number().min(0).max(1) }),
]);
const corner = z.strictObject({
  side: z.enum(["left", "right"]).optional(),
  links: z.array(z.strictObject({ name: z.string(), inner_mm: point })).min(1),
  spring: z.strictObject({ rate_n_per_mm: z.number().positive(), seat }),
  hold: z.union([z.literal("wheel_load"), z.literal("contact_height")]).optional(),
  axis: z.union([point, z.strictObject({ to_mm: point })]).optional(),
  steps: z.int().max(100).optional(),
});

const sound = {
  links: [{ name: "a", inner_mm: [1, 2, 3] }],
  spring: { rate_n_per_mm: 30, seat: { on: "knuckle", moving_mm: [1, 2, 3] } },
};

const findingsOf = (document: unknown) => {
  const parsed = parseWire(corner, document);
  return "findings" in parsed ? parsed.findings : [];
};
const places = (document: unknown) => findingsOf(document).map(({ code, path }) => `${code} ${path}`);

describe("findings of a schema", () => {
  it("gives the value where nothing is wrong", () => {
    expect(parseWire(corner, sound)).toEqual({ value: sound });
  });

  it("says everything at once, each with what came and what was needed", () => {
    const document = {
      side: "lefft",
      links: [{ name: 5, inner_mm: [1, Number.NaN, "3"] }, { name: "b" }, "c"],
      spring: { rate_n_per_mm: -1, seat: { on: "link", link: "a", fraction: 1.5 } },
      steps: 1.5,
    };
    expect(findingsOf(document)).toEqual([
      {
        code: "not-a-number",
        path: "links[0].inner_mm[1]",
        got: "NaN",
        needed: "a finite number, in millimetres",
        hint: "Leave the key out where the figure is not known.",
      },
      {
        code: "unknown-word",
        path: "side",
        got: '"lefft"',
        needed: 'one of: "left", "right"',
        hint: 'The nearest is "left".',
      },
      { code: "wrong-type", path: "links[0].name", got: "5", needed: "text in double quotes", hint: "" },
      {
        code: "wrong-type",
        path: "links[0].inner_mm[2]",
        got: '"3"',
        needed: "a number, in millimetres",
        hint: "Write the number without quotes.",
      },
      { code: "missing-key", path: "links[1].inner_mm", got: "nothing", needed: "a list in [ ]", hint: "" },
      { code: "wrong-type", path: "links[2]", got: '"c"', needed: "an object in { }", hint: "" },
      {
        code: "out-of-range",
        path: "spring.rate_n_per_mm",
        got: "-1",
        needed: "more than 0, in newtons per millimetre",
        hint: "Is it the sign?",
      },
      { code: "out-of-range", path: "spring.seat.fraction", got: "1.5", needed: "at most 1", hint: "" },
      { code: "wrong-type", path: "steps", got: "1.5", needed: "a whole number", hint: "" },
    ]);
  });

  it.each([
    ["rate_n_per_m", "key-unit", "multiply by 0.001 (newtons per metre to newtons per millimetre)"],
    ["rate_lb_per_in", "key-unit", "multiply by 0.17512683"],
    ["rate", "key-unit", "The unit stands in the key: rate_n_per_mm, in newtons per millimetre."],
    ["rate_kg", "key-unit", "kilograms do not measure the same as newtons per millimetre"],
    ["rat_n_per_mm", "unknown-key", "The nearest known key is rate_n_per_mm."],
    ["Rate_N_per_mm", "unknown-key", "The nearest known key is rate_n_per_mm."],
  ])("a spring's %s: %s", (key, code, hint) => {
    const { rate_n_per_mm, ...rest } = sound.spring;
    const findings = findingsOf({ ...sound, spring: { ...rest, [key]: rate_n_per_mm } });
    expect(findings[0]).toMatchObject({ code, path: `spring.${key}`, needed: "the key rate_n_per_mm" });
    expect(findings[0]?.hint).toContain(hint);
    expect(findings[1]).toMatchObject({ code: "missing-key", hint: `${key} stands there instead.` });
    expect(findings).toHaveLength(2);
  });

  it("an unknown key near none names those that are known, of the alternative that is meant", () => {
    const document = {
      ...sound,
      spring: { rate_n_per_mm: 1, seat: { on: "link", link: "a", fraction: 0, colour: 1 } },
    };
    expect(findingsOf(document)).toEqual([
      {
        code: "unknown-key",
        path: "spring.seat.colour",
        got: "colour",
        needed: "one of: on, link, fraction",
        hint: "Take it out; nothing is ignored.",
      },
    ]);
  });

  it("a word that tells alternatives apart", () => {
    expect(findingsOf({ ...sound, spring: { rate_n_per_mm: 1, seat: { on: "knuckel" } } })).toEqual([
      {
        code: "unknown-word",
        path: "spring.seat.on",
        got: '"knuckel"',
        needed: 'one of: "knuckle", "link"',
        hint: 'The nearest is "knuckle".',
      },
    ]);
    expect(places({ ...sound, spring: { rate_n_per_mm: 1, seat: {} } })).toEqual(["missing-key spring.seat.on"]);
    expect(findingsOf({ ...sound, hold: "weel_load" })[0]).toMatchObject({
      code: "unknown-word",
      hint: 'The nearest is "wheel_load".',
    });
  });

  it("a value of the wrong kind for every alternative, and a wrong one inside the likeliest", () => {
    expect(findingsOf({ ...sound, axis: 5 })[0]).toMatchObject({
      path: "axis",
      needed: "a list in [ ] or an object in { }",
    });
    expect(findingsOf({ ...sound, axis: [1, 2] })[0]).toMatchObject({ path: "axis", needed: "exactly 3 entries" });
    expect(places({ ...sound, axis: { to_mm: [1, 2, "3"], from: 1 } })).toEqual([
      "unknown-key axis.from",
      "wrong-type axis.to_mm[2]",
    ]);
  });

  it.each([[null], [5], ["{}"], [[]]])("a document that is %j", (document) => {
    expect(places(document)).toEqual(["wrong-type "]);
  });

  it.each([1e10, -2e9])("the number %d is refused", (value) => {
    expect(places({ ...sound, spring: { ...sound.spring, rate_n_per_mm: value } })).toEqual([
      "number-too-large spring.rate_n_per_mm",
    ]);
  });

  it("too short a list and too many entries of a point", () => {
    expect(findingsOf({ ...sound, links: [] })).toEqual([
      { code: "wrong-length", path: "links", got: "an empty list", needed: "at least 1 entry", hint: "" },
    ]);
    expect(findingsOf({ ...sound, links: [{ name: "a", inner_mm: [1, 2, 3, 4] }] })).toEqual([
      {
        code: "wrong-length",
        path: "links[0].inner_mm",
        got: "a list of 4",
        needed: "exactly 3 entries, in millimetres",
        hint: "",
      },
    ]);
  });

  it("lists at most 200 findings and says that there are more", () => {
    const findings = findingsOf({ ...sound, links: Array.from({ length: 5000 }, () => ({})) });
    expect(findings).toHaveLength(201);
    expect(findings[200]?.code).toBe("too-many-findings");
  });

  it("joins what the text and what the schema say, one finding to a place", () => {
    const parsed = parseReading(
      corner,
      readJson('{"links": [{"name": NaN}], "links": [{"name": NaN, "inner_mm": [1,2,3]}], "spring": 1}'),
    );
    expect("findings" in parsed ? parsed.findings.map(({ code, path }) => `${code} ${path}`) : []).toEqual([
      "not-a-number links[0].name",
      "duplicate-key links",
      "wrong-type spring",
    ]);
  });

  it("takes the words of a check of the schema's own", () => {
    const even = z.strictObject({ n: z.number() }).superRefine(({ n }, context) => {
      if (n % 2 !== 0) {
        context.addIssue({
          code: "custom",
          path: ["n"],
          params: { finding: { code: "out-of-range", needed: "an even number", hint: "Halve it first." } },
        });
      }
    });
    expect(parseWire(even, { n: 3 })).toEqual({
      findings: [{ code: "out-of-range", path: "n", got: "3", needed: "an even number", hint: "Halve it first." }],
    });
  });
});
