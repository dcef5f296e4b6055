import type { DocumentBodies, StoredLook, SymptomEntry } from "#casework";
import { type CarTodaySheet, readBody, type StoredDocumentSheet } from "#contract";
import type { Family } from "../../car.ts";
import { type Answer, askServer } from "../../server/ask-server.ts";
import { loadFamily } from "../../server/families.ts";
import { loadCar, readNumberedLook } from "../case/load-case.ts";

/** One car of the list with its latest visit. */
export interface CarLine {
  readonly id: string;
  readonly car: DocumentBodies["car"];
  /** How many visits it has been here for. */
  readonly visits: number;
  /** null: the car was begun and no visit of it is on record. */
  readonly latest: { readonly id: string; readonly body: DocumentBodies["visit"] } | null;
  /** When it is due again and what can go on; null without a visit. */
  readonly today: CarTodaySheet | null;
}

/** What Today begins with. */
export interface LoadedToday {
  readonly cars: readonly CarLine[];
  readonly settings: DocumentBodies["settings"] | null;
}

type ListedCar = StoredDocumentSheet<"car"> & {
  readonly visits: number;
  readonly latest_visit: StoredDocumentSheet<"visit"> | null;
  readonly today: CarTodaySheet | null;
};

const readLine = ({ id, document, visits, latest_visit, today }: ListedCar): CarLine => ({
  id,
  car: readBody("car", document),
  visits,
  latest: latest_visit === null ? null : { id: latest_visit.id, body: readBody("visit", latest_visit.document) },
  today,
});

interface ListedCars {
  readonly settings: StoredDocumentSheet<"settings"> | null;
  readonly cars: readonly ListedCar[];
}

/** Every car on record and the workshop's settings. */
export const loadToday = (): Promise<Answer<LoadedToday>> =>
  askServer("/api/cars", {}, async (response) => {
    const { settings, cars } = (await response.json()) as ListedCars;
    return {
      settings: settings === null ? null : readBody("settings", settings.document),
      cars: cars.map(readLine),
    };
  });

/** What the small drawing of a car in work shows. */
export interface SeenCar {
  /** null: no family is chosen yet, or it cannot be read. */
  readonly family: Family | null;
  readonly looks: readonly StoredLook[];
  readonly past: readonly StoredLook[];
  readonly hasWords: boolean;
  /** What its owner came with this time. */
  readonly complaints: readonly SymptomEntry[];
  readonly agreed: number;
  readonly stepsDone: number;
}

/** What has been seen of one car; null where the store does not answer. */
export const loadSeenCar = async ({ id, latest }: CarLine): Promise<SeenCar | null> => {
  const answer = await loadCar(id);
  if (answer.kind !== "answer") return null;
  const { car, looks, visits } = answer.body;
  const read = looks.flatMap((look) => readNumberedLook(look) ?? []);
  const named = car.document.family;
  const family = named === null ? null : await loadFamily(named);
  const own = visits.find(({ visit }) => visit.id === latest?.id);
  return {
    family: family?.kind === "answer" ? family.body.family : null,
    looks: read.filter(({ visit }) => visit === latest?.id),
    past: read.filter(({ visit }) => visit !== latest?.id),
    complaints: own?.enquiry == null ? [] : readBody("enquiry", own.enquiry.document).symptoms,
    hasWords: (own?.enquiry?.document.words ?? "") !== "",
    agreed: own?.plan?.document.agreed?.length ?? 0,
    stepsDone: own?.job_card?.document.steps?.length ?? 0,
  };
};
