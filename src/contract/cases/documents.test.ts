import { describe, expect, it } from "vitest";
import type { DocumentBodies, DocumentKind } from "#casework";
import { metresFromMm } from "#quantity";
import { formatArchiveLine, parseArchiveLine } from "./archive-file.ts";
import { formatBody } from "./document-form.ts";
import { documentKinds } from "./document-schemas.ts";
import { parseSentDocument } from "./document-sheet.ts";

const at = "2031-05-14T09:30:00.000Z";

/** A body of every kind with something in every key, and one with nothing where nothing may stand. */
const full: DocumentBodies = {
  car: {
    registration: "UB 7",
    name: "Ouzel saloon",
    year: 2024,
    identityNumber: "UBX0000000000007",
    owner: "an invented owner",
    family: "ouzel-saloon",
    variants: [{ label: "brake", choice: "312 mm", known: false }],
    distanceUnit: "mi",
    odometerOffsetKm: 84_000.5,
    invented: true,
  },
  visit: {
    car: "car-1",
    odometerKm: 84_000,
    date: "2031-05-14",
    by: "MK",
    bay: "2",
    done: ["enquiry", "hand-over"],
    waits: [{ what: "stand", label: "alignment stand", since: at, due: "2031-05-15" }],
    settled: false,
    discMinimum: { front: metresFromMm(21.4), rear: null },
    closed: true,
  },
  enquiry: {
    words: "it knocks\nover bumps",
    symptoms: [
      {
        symptom: "knock-over-bumps",
        side: "left",
        axle: "front",
        conditions: { speedKmh: [20, 50], temperature: "cold", load: "laden", steering: "lock", braking: "light" },
        since: "spring",
      },
    ],
    use: "towing",
    suspects: [{ cause: "bar-link", word: "ruled-out", reason: "link off, knock stays", by: "MK", at }],
  },
  plan: {
    visits: [{ label: "now", odometerKm: 84_000 }],
    declined: ["r1"],
    agreed: [{ remedy: "r2", by: "owner", at }],
    fixed: [{ remedy: "r2", visit: 0 }],
    horizonKm: 130_000,
  },
  "job-card": {
    steps: [{ step: "s1", doneBy: "MK", at, hubToArch: 0.3815, torqueNm: 110, note: "thread cleaned" }],
  },
  "hand-over": {
    overrides: [{ gate: "g", reason: "owner waits", by: "MK", at }],
    taught: [{ item: "steering angle", state: "look-up", by: "MK" }],
    signedBy: "MK",
    signedAt: at,
    receivedBy: "RB",
  },
  settings: {
    workshop: "Invented workshop",
    currency: "€",
    labourCentsPerHour: 9_500,
    taxShare: 0.19,
    visitCents: 4_500,
    units: { distance: "km", length: "in", torque: "lbft", angle: "deg-min", pressure: "psi" },
    invented: true,
  },
  "car-line": { offList: true },
};
const sparse: Partial<DocumentBodies> = {
  car: { ...full.car, year: null, identityNumber: null, owner: null, family: null, variants: [], registration: "" },
  visit: { ...full.visit, odometerKm: null, bay: null, settled: null, done: [], waits: [] },
  enquiry: { words: "", symptoms: [], use: null },
  "job-card": { steps: [{ step: "s1", doneBy: "MK", at, hubToArch: null, torqueNm: null, note: null }] },
  "hand-over": { overrides: [], taught: [], signedBy: null, signedAt: null, receivedBy: null },
};

const idOf = (kind: DocumentKind): string => (kind === "settings" ? "shop" : "case-1");

const send = <K extends DocumentKind>(kind: K, body: DocumentBodies[K]) =>
  parseSentDocument(kind, JSON.stringify({ by: "MK", document: formatBody(kind, body) }));

describe.each(documentKinds)("a document of kind %s", (kind) => {
  const bodies = [full[kind], sparse[kind]].filter((body) => body !== undefined);

  it("comes back as it went out", () => {
    for (const body of bodies) expect(send(kind, body)).toEqual({ value: { by: "MK", body, confirmed: false } });
  });

  it("comes back from a line of an export as it went out", () => {
    for (const body of bodies) {
      const document = { kind, id: idOf(kind), version: 3, by: "MK", at, body };
      const line = { kind: "document" as const, document };
      expect(parseArchiveLine(formatArchiveLine(line))).toEqual({ value: line });
    }
  });

  it("is refused with a key nobody reads, wherever it stands", () => {
    const sheet = formatBody(kind, full[kind]) as Readonly<Record<string, unknown>>;
    const parsed = parseSentDocument(kind, JSON.stringify({ by: "MK", document: { ...sheet, colour: "red" } }));
    expect("findings" in parsed && parsed.findings).toMatchObject([{ code: "unknown-key", path: "document.colour" }]);
  });
});

describe("text that cannot be kept as it was typed", () => {
  it.each([["\u0000"], ["half a pair \ud83d"]])("%j is refused", (text) => {
    const parsed = send("enquiry", { ...full.enquiry, words: `words ${text}` });
    expect("findings" in parsed && parsed.findings).toMatchObject([{ code: "wrong-format", path: "document.words" }]);
  });
});

describe("days and moments", () => {
  it.each(["2031-02-29", "2031-13-01", "2031-00-10", "31-05-14", "2031-5-14", "14.05.2031"])("%s is no day", (date) => {
    expect("findings" in send("visit", { ...full.visit, date })).toBe(true);
  });

  it.each(["2031-05-14T09:30:00", "2031-05-14 09:30:00Z", "2031-05-14T24:00:00Z", "2031-02-30T09:30:00Z"])(
    "%s is no moment",
    (signedAt) => {
      expect("findings" in send("hand-over", { ...full["hand-over"], signedAt })).toBe(true);
    },
  );
});

describe("lines of an export", () => {
  it.each([
    ["not JSON", "{", "not-json"],
    ["nothing known", '{"name": 1}', "unknown-key"],
    ["empty", "{}", "missing-key"],
    ["a newer form", '{"underbench_export": 2, "made_at": "2031-05-14T09:30:00Z"}', "export-newer"],
    ["a form that is no number", '{"underbench_export": "1", "made_at": "2031-05-14T09:30:00Z"}', "unknown-word"],
    ["a document of no kind", '{"document": {"kind": "carr"}}', "unknown-word"],
    ["two things in one line", '{"family": {"id": "a", "text": ""}, "look": {}}', "missing-key"],
  ])("%s is refused", (_, text, code) => {
    const parsed = parseArchiveLine(text);
    expect("findings" in parsed && parsed.findings.map((finding) => finding.code)).toContain(code);
  });
});
