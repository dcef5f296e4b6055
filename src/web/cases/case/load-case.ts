import type { DocumentKind, StoredLook } from "#casework";
import { readLook, type StoredDocumentSheet, sentLook } from "#contract";
import { type Answer, askServer } from "../../server/ask-server.ts";
import { type LoadedFamily, loadFamily } from "../../server/families.ts";
import type { NumberedLook } from "../unsent/send-entries.ts";

/** A visit of a car with the documents kept under its id, as the store has them. */
export interface StoredVisit {
  readonly visit: StoredDocumentSheet<"visit">;
  readonly enquiry: StoredDocumentSheet<"enquiry"> | null;
  readonly plan: StoredDocumentSheet<"plan"> | null;
  readonly job_card: StoredDocumentSheet<"job-card"> | null;
  readonly hand_over: StoredDocumentSheet<"hand-over"> | null;
}

/** Everything on record about one car. */
export interface StoredCar {
  /** null where nobody has saved any. */
  readonly settings: StoredDocumentSheet<"settings"> | null;
  readonly car: StoredDocumentSheet<"car">;
  /** Oldest first. */
  readonly visits: readonly StoredVisit[];
  readonly looks: readonly NumberedLook[];
}

/** What a page of a case begins with. */
export interface LoadedCase extends StoredCar {
  readonly visitId: string;
  /** null: not chosen yet, or it cannot be read. */
  readonly family: LoadedFamily | null;
}

const readJson = async <T>(response: Response): Promise<T> => (await response.json()) as T;

/** One document as the store has it. */
export const loadDocument = <K extends DocumentKind>(kind: K, id: string): Promise<Answer<StoredDocumentSheet<K>>> =>
  askServer(`/api/documents/${kind}/${encodeURIComponent(id)}`, {}, (response) =>
    readJson<StoredDocumentSheet<K>>(response),
  );

/** Everything on record about a car. */
export const loadCar = (id: string): Promise<Answer<StoredCar>> =>
  askServer(`/api/cars/${encodeURIComponent(id)}`, {}, (response) => readJson<StoredCar>(response));

/** Everything one visit's pages need. */
export const loadCase = async (visitId: string): Promise<Answer<LoadedCase>> => {
  const visit = await loadDocument("visit", visitId);
  if (visit.kind !== "answer") return visit;
  const car = await loadCar(visit.body.document.car);
  if (car.kind !== "answer") return car;
  const named = car.body.car.document.family;
  const family = named === null ? null : await loadFamily(named);
  return {
    kind: "answer",
    body: {
      ...car.body,
      visitId,
      family: family?.kind === "answer" ? family.body : null,
    },
  };
};

/** A look of the store, or one still on its way to it, as casework knows it; null where it cannot be read. */
export const readNumberedLook = (sheet: NumberedLook): StoredLook | null => {
  const { sequence, received_at, clock_off, ...fields } = sheet;
  const parsed = sentLook.safeParse(fields);
  return parsed.success ? { ...readLook(parsed.data), sequence, receivedAt: received_at, clockOff: clock_off } : null;
};
