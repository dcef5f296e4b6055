import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { SheetQuestion } from "#casework";
import { parseBodiesFile, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { printAskedSheet } from "#report";
import { type Family, familyFromSilhouette } from "#vehicle";
import { readPdf } from "../../src/report/read-pdf.ts";
import { outsideFrame, overlappingWords, struckWords } from "./crowding.ts";
import { readPageInk } from "./page-ink.ts";

/** Half an inch, points. */
const MARGIN = 36;

const demo = (id: string): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const made = (name: string): Family => {
  const answer = familyFromSilhouette({ name, frontLayout: "double-wishbone", rearLayout: "five-link" });
  if ("findings" in answer) throw new Error("the silhouette of the test is wrong");
  return answer.family;
};
const ouzel = demo("ouzel-saloon");
const dunlin = demo("dunlin-hatch");
const template = made("A car line whose name runs on to sixty letters, all in one go");

const sheets: readonly (readonly [string, SheetQuestion])[] = [
  ["hold, five links, a bar", handSheet(ouzel, "rear-left", "spring-link", "trailing-link/inner-bush")],
  ["hold, a strut, a bar", handSheet(dunlin, "front-right", "lower-arm-front", "lower-arm/rear-bush")],
  [
    "hold, from a silhouette, no hand",
    { kind: "hold", family: template, corner: "rear-left", held: { kind: "ride" }, test: null },
  ],
];

const still = { contactRise: 0, rack: 0, braking: 0, lateral: 0, drive: 0 } as const;
const layoutFile = (file: Record<string, unknown>) => {
  const parsed = parseBodiesFile(JSON.stringify(file));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.value;
};
const layoutText = readFileSync(
  new URL("../../docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url),
  "utf8",
);
const { unsprung_kg: _mass, droop_stop_mm: _stop, ...withoutMass } = JSON.parse(layoutText) as Record<string, unknown>;

const FOUR_STATES = "over travel, torn, firmer by hardness and lowered";

const more: readonly (readonly [string, SheetQuestion])[] = [
  [
    "a layout from a file, a joint loose, and how it is held",
    {
      kind: "layout",
      question: {
        file: layoutFile(JSON.parse(layoutText)),
        fault: { kind: "loose", part: "arm-ball", play: 0.001, assumed: true },
        condition: { ...still, braking: 2000, contactRise: 0.01 },
      },
    },
  ],
  [
    "a layout from a file that does not say what moves, sound",
    { kind: "layout", question: { file: layoutFile(withoutMass), fault: null, condition: still } },
  ],
  ["whole car, leaning", { kind: "car", question: { family: ouzel, motion: { kind: "roll", by: 0.035 } } }],
  ["whole car, steered", { kind: "car", question: { family: template, motion: { kind: "rack", by: 0.04 } } }],
  [
    "over travel, beside another car line",
    {
      kind: "travel",
      question: {
        family: ouzel,
        corner: "front-left",
        condition: still,
        subjects: [{ kind: "sound" }, { kind: "beside", family: dunlin }],
        figures: ["toe", "camber"],
      },
    },
  ],
  [
    FOUR_STATES,
    {
      kind: "travel",
      question: {
        family: template,
        corner: "rear-left",
        condition: { ...still, braking: 2000 },
        subjects: [
          { kind: "sound" },
          { kind: "rubber", position: "rear-left/trailing-link/inner-bush", fault: { kind: "torn", grade: 3 } },
          {
            kind: "rubber",
            position: "rear-left/trailing-link/inner-bush",
            fault: { kind: "firmer", hardness: { from: 55, to: 65 } },
          },
          { kind: "lowered", by: 0.03 },
        ],
        figures: ["camber", "roll-centre"],
      },
    },
  ],
  ["matched, a template", matchedSheet(template, "rear-left", 0)],
  ["matched, measured points, a reading that contradicts", matchedSheet(dunlin, "front-right", 0.004)],
  [
    "fluid gone",
    {
      kind: "shake",
      family: demo("siskin-coupe"),
      question: { corner: "front-left", position: "front-left/tension-link/inner-bush", variation: 0.00003 },
    },
  ],
];

/** Made readings at five heights, the last toe off by so many radians. */
function matchedSheet(family: Family, corner: "rear-left" | "front-right", off: number): SheetQuestion {
  const readings = [0, -0.04, -0.02, 0.02, 0.04].map((travel, i) => ({
    travel,
    camber: -0.02 - 0.35 * travel,
    toe: 0.002 + 0.04 * travel + (i === 4 ? off : 0),
  }));
  const u = { travel: 0.001, camber: 0.0005, toe: 0.0005, length: 0.0005, heightBase: 0.001, bodyBase: 0.002 };
  return { kind: "match", question: { family, corner, readings, lengths: [], u } };
}

function handSheet(family: Family, corner: "rear-left" | "front-right", part: string, joint: string): SheetQuestion {
  const held = { kind: "under", part } as const;
  const way = { kind: "bar", force: 500 } as const;
  const position = `${corner}/${joint}`;
  return {
    kind: "hold",
    family,
    corner,
    held,
    test: { corner, held, position, fault: { kind: "torn", grade: 3 }, way },
  };
}

const print = async (question: SheetQuestion): Promise<Uint8Array> => {
  const printed = printAskedSheet(question, { date: "12 March 2026", by: "I. Marden" });
  if ("findings" in printed) throw new Error(JSON.stringify(printed.findings));
  expect(printed.fileName).toMatch(/^[a-z0-9-]+\.pdf$/);
  return printed.pdf;
};

describe("a computed sheet", { timeout: 120_000 }, () => {
  it.each([...sheets, ...more])(
    "is one A4 page, tagged, every word inside its frame and clear of each other: %s",
    async (_, question) => {
      const bytes = await print(question);
      const { pages, raw, texts } = readPdf(bytes);
      expect(pages).toBe(1);
      expect(raw).toContain("/MediaBox [0 0 595.28 841.89]");
      for (const mark of ["/Marked true", "/Lang (en-GB)", "/S /H1", "/S /Figure", "/S /Table", "/S /TH"])
        expect(raw).toContain(mark);
      const said = texts.join(" ").replaceAll(/\s+/g, " ");
      expect(said).toContain("12 March 2026");
      expect(said).toContain("I. Marden");
      expect(said).toMatch(/jack only/);
      const [page] = readPageInk(bytes);
      if (!page) throw new Error("no page");
      expect([...outsideFrame(page, MARGIN), ...overlappingWords(page), ...struckWords(page)]).toEqual([]);
    },
  );

  it("bears every state it was asked for: as a table, and at its line in the drawing", async () => {
    const [, question] = more.find(([name]) => name === FOUR_STATES) ?? [];
    if (question === undefined) throw new Error("no sheet");
    const { texts } = readPdf(await print(question));
    const words = texts.map((text) => text.replaceAll(/\s+/g, ""));
    for (const table of ["torn:trailinglink", "firmer,55to65ShoreA:"])
      expect(words.some((text) => text.startsWith(table))).toBe(true);
    expect(words.filter((text) => text === "lowered30mm").length).toBeGreaterThanOrEqual(2);
    for (const label of ["sound", "torn", "firmer"]) expect(words).toContain(label);
  });

  it("has the same bytes for the same question on the same day", async () => {
    const [, question] = sheets[1] ?? [];
    if (question === undefined) throw new Error("no sheet");
    expect(Buffer.from(await print(question)).equals(Buffer.from(await print(question)))).toBe(true);
  });
});
