import type { FastifyInstance } from "fastify";
import type { CaseStore, Look, LookOutcome, StoredLook } from "#casework";
import { type BatchEntry, type Finding, formatStoredLook, parseLookBatch } from "#contract";
import type { CaseRecords, PhotoKeeper } from "../case-records.ts";
import { bodyOf } from "../json-body.ts";
import { refuse } from "../refusals.ts";
import { unknownVisit } from "./document-routes.ts";

/** What became of one look of a batch. */
interface LookAnswer {
  readonly id: string | null;
  readonly outcome: "stored" | "known" | "clash" | "refused";
  /** The look as it stands on record; with "clash" it is the other one. */
  readonly look?: unknown;
  /** Why it was not stored. */
  readonly findings?: readonly Finding[];
  /** What is to be said of a look that was stored. */
  readonly remarks?: readonly Finding[];
}

const clash = (index: number, standing: StoredLook): Finding => ({
  code: "look-clash",
  path: `looks[${index}].id`,
  got: "another look under an id that is on record",
  needed: "an id of its own for every look",
  hint: `The look on record is by ${standing.who}, ${standing.at}; it stays. Send this one under a new id.`,
});

const clockOff = (index: number, { at, receivedAt }: StoredLook): Finding => ({
  code: "clock-off",
  path: `looks[${index}].at`,
  got: at,
  needed: `within a day of ${receivedAt}, the clock of the program`,
  hint: "The look is kept. Set the clock of the device; pages say that the time of this look is not sure.",
});

const photoMissing = (index: number, hash: string): Finding => ({
  code: "photo-missing",
  path: `looks[${index}].photo`,
  got: hash,
  needed: "a photo that is kept",
  hint: "The look is kept. Send the photo to /api/photos; it finds its look by its hash.",
});

const otherCar = (look: Look, car: string, index: number): Finding => ({
  code: "visit-of-other-car",
  path: `looks[${index}].car`,
  got: look.car,
  needed: `${car}, the car of visit ${look.visit}`,
  hint: "",
});

/** Why each look cannot stand on its visit; visits are loaded once. */
const checkVisits = async (cases: CaseStore, entries: readonly BatchEntry[]): Promise<readonly BatchEntry[]> => {
  const cars = new Map<string, string | null>();
  for (const entry of entries) {
    if ("look" in entry && !cars.has(entry.look.visit)) {
      cars.set(entry.look.visit, (await cases.loadDocument("visit", entry.look.visit))?.body.car ?? null);
    }
  }
  return entries.map((entry, index) => {
    if (!("look" in entry)) return entry;
    const { id, visit, car } = entry.look;
    const own = cars.get(visit) ?? null;
    if (own === null) return { id, findings: [unknownVisit(visit, `looks[${index}].visit`)] };
    return own === car ? entry : { id, findings: [otherCar(entry.look, own, index)] };
  });
};

const remarksOn = async (photos: PhotoKeeper, index: number, look: StoredLook): Promise<readonly Finding[]> => [
  ...(look.clockOff ? [clockOff(index, look)] : []),
  ...(look.photo === null || (await isKept(photos, look.photo)) ? [] : [photoMissing(index, look.photo)]),
];

/** A folder of photos that cannot be read has no photo; it must not hold up a look that is stored already. */
const isKept = (photos: PhotoKeeper, hash: string): Promise<boolean> => photos.hasPhoto(hash).catch(() => false);

const answerLook = async (photos: PhotoKeeper, index: number, outcome: LookOutcome): Promise<LookAnswer> => {
  const show = (look: StoredLook) => ({ sequence: look.sequence, ...formatStoredLook(look) });
  if ("clash" in outcome) {
    const { id } = outcome.clash;
    return { id, outcome: "clash", look: show(outcome.clash), findings: [clash(index, outcome.clash)] };
  }
  const look = "stored" in outcome ? outcome.stored : outcome.known;
  const remarks = await remarksOn(photos, index, look);
  return {
    id: look.id,
    outcome: "stored" in outcome ? "stored" : "known",
    look: show(look),
    ...(remarks.length > 0 && { remarks }),
  };
};

const appendLooks = async (
  { cases, photos, now }: CaseRecords,
  read: readonly BatchEntry[],
): Promise<readonly LookAnswer[]> => {
  const entries = await checkVisits(cases, read);
  const good = entries.flatMap((entry) => ("look" in entry ? [entry.look] : []));
  const outcomes = good.length === 0 ? [] : await cases.appendLooks(good, now());
  const answers: LookAnswer[] = [];
  let next = 0;
  for (const [index, entry] of entries.entries()) {
    if ("look" in entry) {
      const outcome = outcomes[next];
      next++;
      if (outcome === undefined) throw new Error(`Nothing is known of look ${entry.look.id}.`);
      answers.push(await answerLook(photos, index, outcome));
    } else answers.push({ id: entry.id, outcome: "refused", findings: entry.findings });
  }
  return answers;
};

/** POST /api/looks stores a batch of looks and answers each of them, in their order, once they are on the disk. */
export const addLookRoutes = (app: FastifyInstance, records: CaseRecords): void => {
  app.post("/api/looks", async (request, reply) => {
    const text = bodyOf(request);
    const batch = "findings" in text ? text : parseLookBatch(text.text);
    if ("findings" in batch) return refuse(reply, 422, batch.findings);
    return reply.send({ answers: await appendLooks(records, batch.value) });
  });
};
