import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable, Writable } from "node:stream";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { computeFaultEffect } from "#casework";
import { parseSilhouette } from "#contract";
import { runCommandLine } from "../main.ts";

type Wire = Readonly<Record<string, unknown>>;

const example = new URL("../../../docs/examples/visit.json", import.meta.url);
const text = readFileSync(example, "utf8");

const collect = (): { readonly stream: Writable; readonly text: () => string } => {
  const chunks: string[] = [];
  const stream = new Writable({
    write: (chunk: Buffer, _encoding, done) => {
      chunks.push(chunk.toString("utf8"));
      done();
    },
  });
  return { stream, text: () => chunks.join("") };
};

const run = async (words: readonly string[], input = "") => {
  const output = collect();
  const problems = collect();
  const status = await runCommandLine(words, {
    terminal: { input: Readable.from([Buffer.from(input)]), output: output.stream, problems: problems.stream },
    serve: () => Promise.resolve(),
    dataFolder: "no-data-folder-here",
  });
  return { status, output: output.text(), problems: problems.text() };
};

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "underbench-appraise-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("appraise", () => {
  it("says findings, suspects, plan, job card and hand-over as text, and that all is invented", async () => {
    const { status, output, problems } = await run(["appraise", "-"], text);
    expect(problems).toBe("");
    expect(status).toBe(0);
    for (const head of ["FINDINGS", "SUSPECTS", "PLAN", "JOB CARD", "HAND-OVER", "Everything here is invented."])
      expect(output).toContain(head);
    expect(output).toContain("Repair first");
    expect(output).toMatch(/torn bush lets the rear left wheel turn in \d\.\d+° further/);
    expect(output).toContain("Best plan over what is on file, proved");
    expect(output).not.toMatch(/\b(NaN|undefined|null)\b/);
  });

  it("writes the owner's page beside it, never over a file that is there", async () => {
    const pdf = join(folder, "owner.pdf");
    expect((await run(["appraise", "-", "--pdf", pdf], text)).status).toBe(0);
    const written = readFileSync(pdf);
    expect(written.subarray(0, 5).toString()).toBe("%PDF-");
    const again = await run(["appraise", "-", "--pdf", pdf, "--json"], text);
    expect(again.status).toBe(2);
    expect(again.output).toContain("file-exists");
    expect(statSync(pdf).size).toBe(written.length);
  });

  it("refuses with 2 and every finding; --json puts them on standard output", async () => {
    const spoilt = JSON.stringify({ ...JSON.parse(text), looks: [{ place: "rear-left/x" }], ratse: 1 });
    const said = await run(["appraise", "-"], spoilt);
    expect(said.status).toBe(2);
    expect(said.output).toBe("");
    expect(said.problems).toContain("looks[0].content");
    expect(said.problems).toContain("ratse");
    const asJson = await run(["appraise", "-", "--json"], spoilt);
    expect(asJson.status).toBe(2);
    expect((JSON.parse(asJson.output) as { findings: unknown[] }).findings.length).toBeGreaterThan(1);
  });

  it("names the nearest family on file, and a place the family does not have", async () => {
    const other = await run(["appraise", "-"], text.replace('"ouzel-saloon"', '"ouzel-salon"'));
    expect(other.status).toBe(2);
    expect(other.problems).toContain("The nearest is ouzel-saloon.");
    const place = await run(
      ["appraise", "-"],
      text.replace("rear-left/trailing-link/inner-bush", "rear-left/trailing-link/iner-bush"),
    );
    expect(place.problems).toContain("The nearest is rear-left/trailing-link/inner-bush.");
  });

  it("takes a car nobody has measured, and one without a family", async () => {
    const file = JSON.parse(text) as { family: unknown; looks: unknown[]; looks_before: unknown[] };
    const silhouette = {
      kind: "silhouette",
      silhouette: { front_layout: "double-wishbone", rear_layout: "five-link" },
    };
    const looks = [{ place: "rear-left/trailing-link/inner-bush", content: { kind: "signs", signs: ["web-torn"] } }];
    const unknown = await run(
      ["appraise", "-"],
      JSON.stringify({ ...file, family: silhouette, looks, looks_before: [] }),
    );
    expect(unknown.status).toBe(0);
    expect(unknown.output).toContain("Work is the usual for these layouts");
    const asJson = await run(
      ["appraise", "-", "--json"],
      JSON.stringify({ ...file, family: silhouette, looks, looks_before: [] }),
    );
    const said = (JSON.parse(asJson.output) as { findings: readonly { place: string; effect: Wire | null }[] })
      .findings;
    const wire = said.find(({ place }) => place === looks[0]?.place)?.effect;
    const made = parseSilhouette(silhouette.silhouette);
    if ("findings" in made || wire == null) throw new Error("nothing was computed");
    const answer = computeFaultEffect(made.family, {
      corner: "rear-left",
      position: "rear-left/trailing-link/inner-bush",
      fault: { kind: "torn", grade: 3 },
      condition: { contactRise: 0, rack: 0, braking: Number(wire.braking_n), lateral: 0, drive: 0 },
    });
    if ("findings" in answer) throw new Error("the page would not compute it");
    const { narrows, parts, cautions, howSure, headline } = answer.effect;
    expect(wire).toMatchObject({ narrows, parts, cautions, how_sure: howSure });
    expect(parts.length).toBeGreaterThan(20);
    expect(narrows).toMatch(/would narrow it most/);
    expect((wire.headline as Wire).inputs).toEqual(headline.inputs);
    expect(unknown.output).toContain(narrows);
    const none = await run(["appraise", "-"], JSON.stringify({ ...file, family: null, looks: [], looks_before: [] }));
    expect(none.status).toBe(0);
    expect(none.output).toContain("No family is chosen, so nothing is judged.");
  });

  it("carries heights and alignment through findings, plan and hand-over, as text and as JSON", async () => {
    const file = JSON.parse(text) as { looks: unknown[]; visit: object };
    const read = (place: string, quantity: string, value: object) => ({
      place,
      load_state: "standing",
      content: { kind: "reading", quantity, ...value, point: null },
    });
    const looks = [
      read("front-left/ride-height", "ride-height", { value_mm: 352, u_mm: 1 }),
      read("front-right/ride-height", "ride-height", { value_mm: 372, u_mm: 1 }),
      read("front-left/alignment", "camber", { value_deg: -2.2, u_deg: 0.05 }),
      read("front-right/alignment", "camber", { value_deg: -0.8, u_deg: 0.05 }),
    ];
    const visit = { ...file, looks: [...file.looks, ...looks] };
    const { output, problems } = await run(["appraise", "-"], JSON.stringify(visit));
    expect(problems).toBe("");
    expect(output).toContain("Plan: front left: ride height 352 mm, 20 mm less than the other side");
    expect(output).toContain("limit 362 mm to 382 mm, by its maker; beyond");
    expect(output).toContain("can be: coil spring broken");
    expect(output).toContain("Alignment, all four wheels (alignment@car), plan");
    expect(output).toContain(
      "Front left, camber: as found −2.20° (beyond), as left not taken; limit −1.59° to −0.79°, by its maker, carried to the height it stands at",
    );
    const unsettled = { ...visit, visit: { ...file.visit, settled: false } };
    const asJson = await run(["appraise", "-", "--json"], JSON.stringify(unsettled));
    const { findings } = JSON.parse(asJson.output) as { findings: readonly Record<string, unknown>[] };
    const at = (place: string) => findings.find((f) => f.place === place);
    expect(at("front-left/ride-height")).toMatchObject({ grade: null, not_known: true });
    expect(at("front-left/alignment")).toMatchObject({ grade: 2, caveat: "Judged on heights that had not settled." });
  });

  it("prints the schema of a visit file", async () => {
    const { output } = await run(["schema", "--visit"]);
    expect((JSON.parse(output) as { title: string }).title).toBe("Visit file");
  });
});
