import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable, Writable } from "node:stream";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import type { Door, Finding } from "#contract";
import { runCommandLine } from "./main.ts";
import type { ExitStatus } from "./terminal.ts";

const doubleInput = z.strictObject({ length_mm: z.number() });
const double: Door<z.infer<typeof doubleInput>> = {
  id: "test.double",
  summary: "Twice a length.",
  input: doubleInput,
  output: z.strictObject({ double_mm: z.number() }),
  relation: "2 x",
  source: "invented",
  accuracy: "exact",
  compute: ({ length_mm }) => {
    if (length_mm === 13) throw new Error("inner workings");
    return { output: { double_mm: 2 * length_mm } };
  },
};

interface Ended {
  readonly status: ExitStatus;
  readonly output: string;
  readonly problems: string;
}

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

const run = async (words: readonly string[], input: string | Buffer | readonly Buffer[] = ""): Promise<Ended> => {
  const output = collect();
  const problems = collect();
  const chunks = typeof input === "string" || Buffer.isBuffer(input) ? [Buffer.from(input)] : input;
  const status = await runCommandLine(words, {
    terminal: { input: Readable.from(chunks), output: output.stream, problems: problems.stream },
    serve: () => Promise.resolve(),
    doors: [double],
  });
  return { status, output: output.text(), problems: problems.text() };
};

const findings = (text: string): readonly Finding[] =>
  (JSON.parse(text) as { readonly findings: readonly Finding[] }).findings;

describe("calc", () => {
  it("answers one question", async () => {
    expect(await run(["calc", "test.double"], '{"length_mm": 0.1}')).toEqual({
      status: 0,
      output: '{"double_mm":0.2}\n',
      problems: "",
    });
  });

  it("lists in words and as JSON", async () => {
    expect((await run(["calc", "--list"])).output).toBe("test.double  Twice a length.\n");
    const { output } = await run(["calc", "--list", "--json"]);
    expect(JSON.parse(output)).toMatchObject({ calculations: [{ id: "test.double", relation: "2 x" }] });
  });

  it.each([
    ["nothing", "", "no-input"],
    ["a key misspelt", '{"lenght_mm": 1}', "unknown-key"],
    ["another unit", '{"length_m": 1}', "key-unit"],
    ["NaN", '{"length_mm": NaN}', "not-a-number"],
    ["a huge number", '{"length_mm": 1e300}', "number-too-large"],
    ["half a text", '{"length_mm": ', "not-json"],
    ["bytes that are not UTF-8", Buffer.from([0x22, 0xff, 0x22]), "not-utf-eight"],
  ])("refuses %s with status 2 and findings among the problems", async (_, input, code) => {
    const ended = await run(["calc", "test.double"], input);
    expect([ended.status, ended.output, findings(ended.problems)[0]?.code]).toEqual([2, "", code]);
  });

  it("names the nearest id", async () => {
    const ended = await run(["calc", "test.duoble"], "{}");
    expect([ended.status, findings(ended.problems)[0]?.hint]).toEqual([2, "The nearest is test.double."]);
  });

  it("refuses 50 MB and 65 MB", async () => {
    const values = await run(["calc", "test.double"], `{"length_mm": [${"0,".repeat(25_000_000)}0]}`);
    expect([values.status, findings(values.problems)[0]?.code]).toEqual([2, "too-many-values"]);
    const megabyte = Buffer.alloc(1024 * 1024, " ");
    const bytes = await run(
      ["calc", "test.double"],
      Array.from({ length: 65 }, () => megabyte),
    );
    expect([bytes.status, findings(bytes.problems)[0]?.code]).toEqual([2, "input-too-large"]);
  });

  it("ends with 1 on a fault of ours", async () => {
    const ended = await run(["calc", "test.double"], '{"length_mm": 13}');
    expect([ended.status, ended.output]).toEqual([1, ""]);
    expect(ended.problems).toContain("A fault of ours.");
  });

  it.each([
    [["calc"]],
    [["calc", "test.double", "--list"]],
    [["calc", "--batch", "--list"]],
    [["calc", "--batch", "--json"]],
    [["calc", "--bach"]],
    [["clac"]],
  ])("does not guess what %j means", async (words) => {
    const ended = await run(words, "{}");
    expect([ended.status, ended.output]).toEqual([2, ""]);
    expect(ended.problems).not.toBe("");
    expect(ended.problems).not.toMatch(/error/i);
  });
});

describe("calc --batch", () => {
  const lines = (ended: Ended): readonly unknown[] =>
    ended.output
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line) as unknown);

  it("answers every line in order and ends with 0 though some are refused", async () => {
    const asked = [
      '{"id": "test.double", "input": {"length_mm": 1}}',
      '{"id": "test.double", "input": {"length_mm": NaN, "lenght_mm": 2, "length_mm": 3}}',
      "not json",
      "",
      '{"id": "test.nuble", "input": {}}',
      '{"ident": "test.double", "input": 5}',
      "[]",
      '{"id": "test.double", "input": {"length_mm": 2}}',
    ];
    const ended = await run(["calc", "--batch"], asked.join("\n"));
    expect(ended.status).toBe(0);
    const answers = lines(ended);
    expect(answers).toHaveLength(asked.length);
    expect(answers[0]).toEqual({ output: { double_mm: 2 } });
    expect(answers[7]).toEqual({ output: { double_mm: 4 } });
    const places = answers.map((answer) =>
      ((answer as { readonly findings?: readonly Finding[] }).findings ?? []).map(
        ({ code, path }) => `${code} ${path}`,
      ),
    );
    expect(places.slice(1, 7)).toEqual([
      ["not-a-number length_mm", "duplicate-key length_mm", "unknown-key lenght_mm"],
      ["not-json "],
      ["no-input "],
      ["unknown-calculation id"],
      ["unknown-key ident", "missing-key id", "wrong-type input"],
      ["wrong-type "],
    ]);
  });

  it("reads lines that arrive in pieces and with Windows line ends", async () => {
    const whole = Buffer.from(
      '{"id":"test.double","input":{"length_mm":1}}\r\n{"id":"test.double","input":{"length_mm":2}}\r\n',
    );
    const pieces = Array.from({ length: whole.length }, (_, at) => whole.subarray(at, at + 1));
    expect(lines(await run(["calc", "--batch"], pieces))).toEqual([
      { output: { double_mm: 2 } },
      { output: { double_mm: 4 } },
    ]);
  });

  it("goes on after a fault of ours and ends with 1", async () => {
    const asked = [13, 1].map((length) => `{"id":"test.double","input":{"length_mm":${length}}}`).join("\n");
    const ended = await run(["calc", "--batch"], asked);
    expect(ended.status).toBe(1);
    expect(lines(ended)).toMatchObject([{ findings: [{ code: "our-fault" }] }, { output: { double_mm: 2 } }]);
  });

  it("answers a line of 65 MB with its limit and the next one as ever", async () => {
    const megabyte = Buffer.alloc(1024 * 1024, "x");
    const last = Buffer.from('\n{"id":"test.double","input":{"length_mm":1}}');
    const ended = await run(["calc", "--batch"], [...Array.from({ length: 65 }, () => megabyte), last]);
    expect(lines(ended)).toMatchObject([{ findings: [{ code: "input-too-large" }] }, { output: { double_mm: 2 } }]);
  });

  it("answers nothing with nothing", async () => {
    expect(await run(["calc", "--batch"], "")).toEqual({ status: 0, output: "", problems: "" });
  });
});

describe("serve", () => {
  it.each([
    [["serve"], false],
    [["serve", "--empty"], true],
  ])("%j opens the program, a fresh folder empty: %s", async (words, empty) => {
    const asked: unknown[] = [];
    const { stream } = collect();
    const serve = async (options: unknown): Promise<void> => void asked.push(options);
    const terminal = { input: Readable.from([]), output: stream, problems: stream };
    expect(await runCommandLine(words, { terminal, serve, doors: [double] })).toBe(0);
    expect(asked).toEqual([{ empty }]);
  });
});

describe("schema and help", () => {
  it("prints the schemas of a calculation", async () => {
    const ended = await run(["schema", "--door", "test.double"]);
    expect(JSON.parse(ended.output)).toMatchObject({ input: { required: ["length_mm"], additionalProperties: false } });
    expect((await run(["schema", "--door", "test.dubble"])).status).toBe(2);
  });

  it("prints the schema of a family sheet", async () => {
    const ended = await run(["schema"]);
    expect(JSON.parse(ended.output)).toMatchObject({ type: "object", additionalProperties: false });
    const layout = await run(["schema", "--layout"]);
    expect(JSON.parse(layout.output)).toMatchObject({ title: "Layout as bodies and joints" });
  });

  it("prints one schema at a time", async () => {
    const ended = await run(["schema", "--layout", "--visit"]);
    expect(ended.status).toBe(2);
    expect(ended.problems).toContain("give one of --visit, --layout, --door");
  });

  it.each([[["--help"]], [["calc", "--help"]], [["family", "check", "--help"]], [["help", "schema"]]])(
    "%j explains on the output with status 0",
    async (words) => {
      const ended = await run(words);
      expect([ended.status, ended.problems]).toEqual([0, ""]);
      expect(ended.output).toContain("Usage: underbench");
    },
  );
});

describe("family check", () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "sheets-"));
    writeFileSync(join(folder, "empty.json"), "");
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("lists findings with path, got, needed and hint, from a file and from the input", async () => {
    const ended = await run(["family", "check", "-"], '{"id": "a", "wheelbase_m": 2.7, "id": "b"}');
    expect([ended.status, ended.output]).toEqual([2, ""]);
    expect(ended.problems).toContain(
      "wheelbase_m  [key-unit]\n  got     wheelbase_m\n  needed  the key wheelbase_mm\n  hint    ",
    );
    expect(ended.problems).toContain("id  [duplicate-key]");
    expect(ended.problems).toMatch(/\d+ findings\n$/);
    expect((await run(["family", "check", join(folder, "empty.json")])).status).toBe(2);
  });

  it("says findings as JSON where asked", async () => {
    const ended = await run(["family", "check", "-", "--json"], "{}");
    expect([ended.status, ended.problems]).toEqual([2, ""]);
    expect(findings(ended.output).length).toBeGreaterThan(3);
  });

  it.each(["absent.json", "."])("says that %s is no file to read", async (name) => {
    const ended = await run(["family", "check", join(folder, name)]);
    expect(ended.status).toBe(2);
    expect(ended.problems).toContain("[no-file]");
  });
});

describe("sheet", { timeout: 60_000 }, () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "computed-sheets-"));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const asked = {
    sheet: "shake",
    family: "siskin-coupe",
    corner: "front-left",
    position: "front-left/tension-link/inner-bush",
    variation_mm: 0.03,
  };

  it("prints a hydraulic bush without its fluid on one page, never over a file that is there", async () => {
    const pdf = join(folder, "shake.pdf");
    const words = ["sheet", "-", "--pdf", pdf, "--data", join(folder, "none")];
    expect(await run(words, JSON.stringify(asked))).toEqual({ status: 0, output: `${pdf}\n`, problems: "" });
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe("%PDF-");
    const again = await run(words, JSON.stringify(asked));
    expect([again.status, again.output]).toEqual([2, ""]);
    expect(again.problems).toContain("[file-exists]");
  });

  it("prints a layout from a file, of no car line", async () => {
    const file: unknown = JSON.parse(
      readFileSync(new URL("../../docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url), "utf8"),
    );
    const fault = { kind: "torn", part: "arm-front" };
    const pdf = join(folder, "layout.pdf");
    const ended = await run(["sheet", "-", "--pdf", pdf], JSON.stringify({ sheet: "layout", file, fault }));
    expect(ended).toEqual({ status: 0, output: `${pdf}\n`, problems: "" });
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe("%PDF-");
  });

  it.each([
    [{ ...asked, family: "siskin-cupe" }, "family  [unknown-family]"],
    [{ ...asked, variation_mm: 2 }, "variation_mm  [out-of-range]"],
    [{ ...asked, sheet: "shape" }, "sheet  ["],
    [{ sheet: "layout", file: {} }, "file.layout  [missing-key]"],
  ])("says what is wrong with %o", async (question, problem) => {
    const ended = await run(["sheet", "-", "--pdf", join(folder, "no.pdf")], JSON.stringify(question));
    expect([ended.status, ended.output]).toEqual([2, ""]);
    expect(ended.problems).toContain(problem);
  });
});
