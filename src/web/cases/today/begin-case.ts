import type { DocumentBodies } from "#casework";
import { formatBody } from "#contract";
import { currentRecorder } from "../case/recorder.ts";
import { UNNAMED_CAR } from "../case/unnamed-car.ts";
import { outbox } from "../unsent/workshop-outbox.ts";
import type { FirstEntry } from "./first-entry.ts";
import type { CarLine } from "./load-today.ts";

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, "");

/** Cars on record that an entry may mean: by plate or by name. */
export const carsMeant = (typed: string, cars: readonly CarLine[]): readonly CarLine[] => {
  const asked = plain(typed);
  if (asked.length < 2) return [];
  return cars.filter(({ car }) => plain(car.registration) === asked || plain(car.name) === asked);
};

const randomWord = (): string => {
  const letters = "abcdefghjkmnpqrstuvwxyz23456789";
  return [...crypto.getRandomValues(new Uint8Array(6))].map((byte) => letters[byte % letters.length]).join("");
};

/** A day of this device's calendar, ISO. */
export const today = (): string => {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const newId = (kind: "car" | "visit"): string => `${kind}-${today().replaceAll("-", "")}-${randomWord()}`;

const carOf = (entry: FirstEntry, invented: boolean): DocumentBodies["car"] => ({
  registration: entry.kind === "registration" ? entry.text : "",
  name: entry.kind === "words" ? UNNAMED_CAR : entry.text,
  year: null,
  identityNumber: null,
  owner: null,
  family: null,
  variants: [],
  distanceUnit: "km",
  odometerOffsetKm: 0,
  invented,
});

const putNew = <K extends "car" | "visit" | "enquiry">(kind: K, id: string, body: DocumentBodies[K]): void =>
  outbox.putDocument({ kind, id, body: formatBody(kind, body), by: currentRecorder(), over: null });

const beginVisit = async (car: string): Promise<string> => {
  const id = newId("visit");
  putNew("visit", id, {
    car,
    odometerKm: null,
    date: today(),
    by: currentRecorder(),
    bay: null,
    done: [],
    waits: [],
    settled: null,
    closed: false,
  });
  return id;
};

/** Whether the store has a new visit; false where it waits in this browser. */
const isStored = async (id: string): Promise<boolean> => {
  await outbox.send();
  return outbox.state().documents.has(`document.visit.${id}`);
};

/** A begun case: the id of its visit, and whether the store has it already. */
export interface BegunCase {
  readonly visit: string;
  readonly stored: boolean;
}

/** Begins a case for a car nobody has on record; `invented` where the workshop itself is. */
export const beginNewCase = async (entry: FirstEntry, invented: boolean): Promise<BegunCase> => {
  const car = newId("car");
  putNew("car", car, carOf(entry, invented));
  const visit = await beginVisit(car);
  if (entry.kind === "words") putNew("enquiry", visit, { words: entry.text, symptoms: [], use: null });
  return { visit, stored: await isStored(visit) };
};

/** Begins another visit of a car on record. */
export const beginNextVisit = async (car: string): Promise<BegunCase> => {
  const visit = await beginVisit(car);
  return { visit, stored: await isStored(visit) };
};
