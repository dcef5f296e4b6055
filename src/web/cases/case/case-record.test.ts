import { expect, test } from "vitest";
import type { StoredDocumentSheet, WireBody } from "#contract";
import { documentKey, type UnsentEntry } from "../unsent/entry.ts";
import type { OutboxState } from "../unsent/outbox.ts";
import type { NumberedLook } from "../unsent/send-entries.ts";
import { readCaseRecord, versionOnRecord } from "./case-record.ts";
import type { LoadedCase } from "./load-case.ts";

const AT = "2031-05-14T09:00:00Z";

const carBody = (owner: string | null): WireBody<"car"> => ({
  registration: "QX 1",
  name: "Ouzel saloon",
  year: null,
  identity_number: null,
  owner,
  family: null,
  variants: [],
  distance_unit: "km",
  odometer_offset_km: 0,
  invented: true,
});

const car = (version: number, owner: string | null): StoredDocumentSheet<"car"> => ({
  kind: "car",
  id: "car-1",
  version,
  by: "MK",
  at: AT,
  document: carBody(owner),
});

const visit = (id: string, date: string): LoadedCase["visits"][number] => ({
  visit: {
    kind: "visit",
    id,
    version: 1,
    by: "MK",
    at: AT,
    document: {
      car: "car-1",
      odometer_km: 1000,
      date,
      by: "MK",
      bay: null,
      done: [],
      waits: [],
      settled: null,
      closed: false,
    },
  },
  enquiry: null,
  plan: null,
  job_card: null,
  hand_over: null,
});

const idOf = (number: number): string => `01890a5d-ac96-774b-bcce-${String(number).padStart(12, "0")}`;

const look = (sequence: number, visitId: string): NumberedLook => ({
  id: idOf(sequence),
  car: "car-1",
  visit: visitId,
  place: "front-left/pads/thickness",
  content: { kind: "nothing-seen" },
  load_state: "hanging",
  instrument: null,
  photo: null,
  note: null,
  who: "MK",
  at: AT,
  sequence,
  received_at: AT,
  clock_off: false,
});

const loaded: LoadedCase = {
  visitId: "visit-2",
  settings: null,
  family: null,
  car: car(3, "loaded"),
  visits: [visit("visit-1", "2030-05-14"), visit("visit-2", "2031-05-14")],
  looks: [look(1, "visit-1"), look(2, "visit-2")],
};

const nothing: OutboxState = {
  entries: new Map(),
  documents: new Map(),
  looks: new Map(),
  trouble: null,
  remarks: [],
  keeps: true,
};

const unsent = (state: UnsentEntry["state"], number: number): readonly [string, UnsentEntry] => {
  const { sequence: _sequence, received_at: _received, clock_off: _clock, ...sheet } = look(number, "visit-2");
  return [`look.${sheet.id}`, { what: "look", look: sheet, confirmed: false, state }];
};

test("looks of earlier visits are the past, those of this one are its own", () => {
  const record = readCaseRecord(loaded, nothing);
  expect(record.looks.map(({ id }) => id)).toEqual([idOf(2)]);
  expect(record.past.map(({ id }) => id)).toEqual([idOf(1)]);
  expect(record.pastVisit?.date).toBe("2030-05-14");
});

test("what waits to be sent counts already, what was refused does not", () => {
  const entries = new Map([unsent({ kind: "waiting" }, 8), unsent({ kind: "refused", findings: [] }, 9)]);
  expect(readCaseRecord(loaded, { ...nothing, entries }).looks.map(({ id }) => id)).toEqual([idOf(2), idOf(8)]);
});

test("a reading no car shows does not count until the store has it, or somebody has said that it stands", () => {
  const odd = (confirmed: boolean): OutboxState => {
    const [key, entry] = unsent({ kind: "waiting" }, 8);
    if (entry.what !== "look") throw new Error("no look");
    const content = { kind: "reading" as const, quantity: "ride-height", value_mm: 3820, u_mm: 1, point: null };
    const read = { ...entry.look, place: "front-left/ride-height", content };
    return { ...nothing, entries: new Map([[key, { ...entry, look: read, confirmed }]]) };
  };
  expect(readCaseRecord(loaded, odd(false)).looks.map(({ id }) => id)).toEqual([idOf(2)]);
  expect(readCaseRecord(loaded, odd(true)).looks.map(({ id }) => id)).toEqual([idOf(2), idOf(8)]);
});

test("a look that was loaded and acknowledged stands once", () => {
  const looks = new Map([[idOf(2), look(2, "visit-2")]]);
  expect(readCaseRecord(loaded, { ...nothing, looks }).looks).toHaveLength(1);
});

test("the later version counts, whether it was loaded or acknowledged, and what was typed goes before both", () => {
  const key = documentKey("car", "car-1");
  const older: OutboxState = { ...nothing, documents: new Map([[key, car(2, "older")]]) };
  const newer: OutboxState = { ...nothing, documents: new Map([[key, car(4, "newer")]]) };
  expect(readCaseRecord(loaded, older).car.owner).toBe("loaded");
  expect(readCaseRecord(loaded, newer).car.owner).toBe("newer");
  expect(versionOnRecord("car", loaded, newer)?.version).toBe(4);
  const typed: OutboxState = {
    ...newer,
    entries: new Map([
      [
        key,
        {
          what: "document",
          kind: "car",
          id: "car-1",
          version: 4,
          before: null,
          body: carBody("typed"),
          by: "MK",
          confirmed: false,
          state: { kind: "waiting" },
        },
      ],
    ]),
  };
  expect(readCaseRecord(loaded, typed).car.owner).toBe("typed");
});
