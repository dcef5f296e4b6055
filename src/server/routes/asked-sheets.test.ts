import { readFileSync } from "node:fs";
import type { FastifyInstance } from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { BodiesFault, SheetQuestion } from "#casework";
import { type Finding, formatSheetQuestion, parseBodiesFile, parseFamily, parseSheetQuestion } from "#contract";
import { demoFamilySheets } from "#demo";
import { buildApp } from "../app.ts";
import { openFamilyShelf } from "../family-shelf.ts";

const demo = (id: string) => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const ouzel = demo("ouzel-saloon");
const dunlin = demo("dunlin-hatch");
const position = "rear-left/trailing-link/inner-bush";
const held = { kind: "under", part: "spring-link" } as const;

const layoutText = readFileSync(
  new URL("../../../docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url),
  "utf8",
);
const layoutOf = (document: unknown, fault: BodiesFault | null): SheetQuestion => {
  const file = parseBodiesFile(JSON.stringify(document));
  if ("findings" in file) throw new Error(JSON.stringify(file.findings));
  return {
    kind: "layout",
    question: {
      file: file.value,
      fault,
      condition: { contactRise: 0.01, rack: 0, braking: 2000, lateral: 0, drive: 0 },
    },
  };
};
const withRubber = JSON.parse(layoutText) as { readonly layout: unknown };
const bush = { part: "arm-front", end: null };
const layoutQuestions: readonly SheetQuestion[] = [
  layoutOf(withRubber, { kind: "torn", place: { part: "toe-link", end: "from" } }),
  layoutOf(withRubber, { kind: "firmer", place: bush, low: 1.5, high: 2 }),
  layoutOf(withRubber, { kind: "firmer", place: bush, hardness: { from: 55, to: 75 } }),
  layoutOf(withRubber, { kind: "loose", part: "arm-ball", play: 0.001, assumed: true }),
  layoutOf(withRubber.layout, null),
];

const questions: readonly SheetQuestion[] = [
  { kind: "hold", family: ouzel, corner: "rear-left", held: { kind: "ride" }, test: null },
  {
    kind: "hold",
    family: ouzel,
    corner: "rear-left",
    held,
    test: {
      corner: "rear-left",
      held,
      position,
      fault: { kind: "loose", play: 0.0015, assumed: true },
      way: { kind: "push", at: "rear", force: 200 },
    },
  },
  { kind: "car", question: { family: ouzel, motion: { kind: "rack", by: 0.04 } } },
  {
    kind: "car",
    question: {
      family: ouzel,
      motion: { kind: "bend", by: 4.9, along: -2.4 },
      changed: {
        position: "rear-right/trailing-link/inner-bush",
        fault: { kind: "loose", play: 0.001, assumed: true },
      },
    },
  },
  {
    kind: "shake",
    family: ouzel,
    question: { corner: "front-left", position: "front-left/lower-arm/rear-bush", variation: 0.00003 },
  },
  {
    kind: "travel",
    question: {
      family: ouzel,
      corner: "rear-left",
      condition: { contactRise: 0.01, rack: 0, braking: 2000, lateral: -500, drive: 0 },
      subjects: [
        { kind: "sound" },
        { kind: "rubber", position, fault: { kind: "torn", grade: 3 } },
        { kind: "lowered", by: 0.03 },
        { kind: "beside", family: dunlin },
      ],
      figures: ["toe", "roll-centre"],
    },
  },
  {
    kind: "travel",
    question: {
      family: ouzel,
      corner: "rear-left",
      condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
      subjects: [
        { kind: "sound" },
        { kind: "rubber", position, fault: { kind: "loose", play: 0.0015, assumed: true } },
        { kind: "rubber", position, fault: { kind: "firmer", factor: 1.5 } },
      ],
      figures: ["toe", "camber"],
    },
  },
  {
    kind: "travel",
    question: {
      family: ouzel,
      corner: "rear-left",
      condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
      subjects: [
        { kind: "sound" },
        { kind: "every-rubber", fault: { kind: "firmer", hardness: { from: 55, to: 65 } } },
      ],
      figures: ["toe", "camber"],
    },
  },
  {
    kind: "match",
    question: {
      family: dunlin,
      corner: "front-left",
      readings: [
        { travel: 0, camber: -0.01, toe: 0.001 },
        { travel: 0.03, camber: null, toe: 0.0005 },
        { travel: -0.03, camber: -0.002, toe: null },
      ],
      lengths: [{ link: "tie-rod", length: 0.4 }],
      u: { travel: 0.001, camber: 0.0005, toe: 0.0005, length: 0.0005, heightBase: 0.001, bodyBase: 0 },
    },
  },
];

describe("the question of a printed sheet", () => {
  it("comes back from what is sent as it was asked", () => {
    for (const question of [...questions, ...layoutQuestions]) {
      const parsed = parseSheetQuestion(JSON.stringify(formatSheetQuestion(question)));
      if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
      const found = parsed.value.families.map(({ id }) => (id === ouzel.id ? ouzel : dunlin));
      expect(JSON.parse(JSON.stringify(parsed.value.withFamilies(found), rounded))).toEqual(
        JSON.parse(JSON.stringify(question, rounded)),
      );
    }
  });
});

/** Rounding of units that were changed and changed back. */
const rounded = (_: string, value: unknown): unknown =>
  typeof value === "number" ? Number(value.toPrecision(12)) : value;

describe("printed sheets over HTTP", { timeout: 60_000 }, () => {
  let app: FastifyInstance;
  beforeEach(() => {
    const store = { list: async () => [], load: async () => null, save: async () => expect.fail("nothing is saved") };
    app = buildApp({
      pages: null,
      families: openFamilyShelf(store, demoFamilySheets),
      today: () => "14 May 2031",
      report: (problem) => expect.fail(String(problem)),
    });
  });
  afterEach(() => app.close());

  const print = (body: unknown) =>
    app.inject({
      method: "POST",
      url: "/api/sheets?by=MK",
      payload: JSON.stringify(body),
      headers: { "content-type": "application/json" },
    });

  it("are PDFs under a name that says what they are", async () => {
    const names = [
      "ouzel-saloon-car-rack.pdf",
      "ouzel-saloon-car-bend.pdf",
      "ouzel-saloon-front-left-lower-arm-rear-bush-fluid-gone.pdf",
    ];
    for (const [i, question] of questions.slice(2, 5).entries()) {
      const reply = await print(formatSheetQuestion(question));
      expect([reply.statusCode, reply.headers["content-type"]]).toEqual([200, "application/pdf"]);
      expect(reply.headers["content-disposition"]).toContain(`filename="${names[i]}"`);
      expect(reply.rawPayload.subarray(0, 5).toString("latin1")).toBe("%PDF-");
    }
  });

  it("are those of a layout too, with rubber or alone", async () => {
    for (const question of [layoutQuestions[2], layoutQuestions[4]]) {
      if (question === undefined) throw new Error("no question");
      const reply = await print(formatSheetQuestion(question));
      expect([reply.statusCode, reply.headers["content-type"]]).toEqual([200, "application/pdf"]);
    }
  });

  it("are refused under the keys that were sent", async () => {
    const places = async (body: unknown) => {
      const reply = await print(body);
      expect(reply.statusCode).toBe(422);
      return (JSON.parse(reply.body) as { findings: readonly Finding[] }).findings.map(
        ({ code, path }) => `${code} ${path}`,
      );
    };
    expect(await places({ sheet: "car", family: "ouzel-saloon", motion: { roll_deg: 20 } })).toEqual([
      "out-of-range motion",
    ]);
    expect(
      await places({
        sheet: "match",
        family: "dunlin-hatch",
        corner: "front-left",
        readings: [0, 10, 600].map((travel_mm) => ({ travel_mm, camber_deg: 0, toe_deg: 25 })),
        u: { travel_mm: 1, camber_deg: 0.03, toe_deg: 0.03 },
      }),
    ).toEqual([
      "out-of-range readings[0].toe_deg",
      "out-of-range readings[1].toe_deg",
      "out-of-range readings[2].travel_mm",
      "out-of-range readings[2].toe_deg",
    ]);
    expect(await places({ sheet: "car", family: "ouzel", motion: { roll_deg: 2 } })).toEqual(["unknown-family family"]);
    const layout = { sheet: "layout", file: withRubber };
    const ends = { kind: "firmer", part: "arm-front" };
    expect(await places({ ...layout, fault: { ...ends, factor_low: 2, new_hardness_shore_a: 60 } })).toEqual([
      "one-of-two fault.factor_low",
    ]);
    expect(await places({ ...layout, fault: { ...ends, new_hardness_shore_a: 60 } })).toEqual([
      "missing-key fault.old_hardness_shore_a",
    ]);
    expect(await places({ ...layout, fault: { ...ends, old_hardness_shore_a: 70, new_hardness_shore_a: 60 } })).toEqual(
      ["not-consistent fault.new_hardness_shore_a"],
    );
    expect(await places({ ...layout, file: { ...withRubber, wheel_load_n: -1, spring: 3 } })).toEqual([
      "key-unit file.spring",
      "out-of-range file.wheel_load_n",
    ]);
    const travel = questions.find(({ kind }) => kind === "travel");
    if (travel === undefined) throw new Error("no question");
    expect(await places({ ...formatSheetQuestion(travel), beside: "nobody" })).toEqual(["unknown-family beside"]);
  });
});
