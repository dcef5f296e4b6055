import { describe, expect, it } from "vitest";
import { computeFaultEffect } from "#casework";
import { printAskedSheet, printFaultSheet, printOwnersPage } from "#report";
import { familyFromSilhouette } from "#vehicle";
import { sampleFacts } from "../samples/sample-fault-sheet.ts";
import { sampleOwnersPage, sampleSaloon, sampleSigns } from "../samples/sample-owners-page.ts";
import { readTagged } from "./structure-tree.ts";
import { findBarriers } from "./universal-access.ts";

const PATIENCE = { timeout: 60_000 };
const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString("latin1");
const sheet = printFaultSheet(sampleFacts).then(latin);
const barriersOf = (raw: string): readonly string[] => findBarriers(readTagged(raw));

async function begunSheet(): Promise<string> {
  const made = familyFromSilhouette({ frontLayout: "strut", rearLayout: "trailing-arm" });
  if ("findings" in made) throw new Error("the silhouette of the test is wrong");
  const answer = computeFaultEffect(made.family, {
    corner: "rear-left",
    position: "rear-left/trailing-arm/front-bush",
    fault: { kind: "torn", grade: 3 },
    condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
  });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return latin(await printFaultSheet({ family: made.family, effect: answer.effect, date: "1 May 2026" }));
}

describe("a printed file keeps what a machine can check of universal access", PATIENCE, () => {
  it("the sheet of a fault", async () => {
    expect(barriersOf(await sheet)).toEqual([]);
    expect(barriersOf(await begunSheet())).toEqual([]);
  });

  it("the owner's page", async () => {
    expect(barriersOf(latin(await printOwnersPage(sampleOwnersPage(sampleSaloon(), sampleSigns))))).toEqual([]);
  });

  it("the sheet of how to hold a corner", async () => {
    const made = familyFromSilhouette({ frontLayout: "double-wishbone", rearLayout: "five-link" });
    if ("findings" in made) throw new Error("the silhouette of the test is wrong");
    const held = { kind: "ride" } as const;
    const printed = printAskedSheet(
      { kind: "hold", family: made.family, corner: "rear-left", held, test: null },
      { date: "1 May 2026" },
    );
    if ("findings" in printed) throw new Error(JSON.stringify(printed.findings));
    expect(barriersOf(latin(await printed.pdf))).toEqual([]);
  });

  it("reads enough of it to say so", async () => {
    const { elements, pages } = readTagged(await sheet);
    expect(elements.size).toBeGreaterThan(30);
    expect(pages[0]?.sequences.filter(({ number }) => number !== null).length).toBeGreaterThan(30);
    expect(pages[0]?.sequences.some(({ tag, draws }) => tag === "Artifact" && draws)).toBe(true);
  });
});

/** A file spoilt in one place, of the same length where a stream could tell, and the clause that must then be named. */
const SPOILT: readonly (readonly [string, string, RegExp | string, string])[] = [
  ["not marked", "7.1: the file is not marked", "/Marked true", "/Marked null"],
  ["no part", "5:", "<pdfuaid:part>1", "<pdfuaid:part>9"],
  ["no language", "7.2: it names no language", "/Lang (en-GB)", "/Lnag (en-GB)"],
  ["title hidden", "7.1: its title is not displayed", "/DisplayDocTitle true", "/DisplayDocTitle false"],
  ["a figure without text", "7.3:", /\/Alt \(/, "/Atl ("],
  ["a figure anywhere", "7.3: figure", /\/BBox \[/, "/Boxx ["],
  ["headings that skip", "7.4.2: heading", /\/S \/H2/, "/S /H3"],
  ["no first heading", "7.4.2: the first heading", /\/S \/H1/, "/S /P"],
  ["a head of nothing", "7.5: head", /\/Scope \/Column/, "/Cope /Column"],
  ["a font left out", "7.21.4.1:", /\/FontFile2 /, "/FontFail2 "],
  ["glyphs without characters", "7.21.7:", /\/ToUnicode /, "/ToUniqode "],
  ["a type of its own", "7.1: Box is no type", /\/S \/P\n/, "/S /Box\n"],
  ["a page without parents", "14.7.4.4: page", /\/StructParents 0/, "/StructParents 7"],
  ["a sequence of another's", "14.7.4.4: page", /\/K \[3\]/, "/K [4]"],
];

describe("the check finds", PATIENCE, () => {
  it.each(SPOILT)("%s", async (_, said, from, to) => {
    const raw = await sheet;
    const spoilt = raw.replace(from, to);
    expect(spoilt).not.toBe(raw);
    expect(barriersOf(spoilt).join("\n")).toContain(said);
  });
});
