import type { FastifyInstance } from "fastify";
import { type CaseStore, computeCarToday, type StoredDocument } from "#casework";
import { formatCarToday, formatStoredDocument, formatStoredLook, settingsId } from "#contract";
import type { CaseRecords } from "../case-records.ts";
import { refuse } from "../refusals.ts";
import { unknownCar } from "./document-routes.ts";

/** Documents kept under a visit's id, beside the visit itself. */
const visitKinds = ["enquiry", "plan", "job-card", "hand-over"] as const;

const describeVisit = async (
  cases: CaseStore,
  visit: StoredDocument<"visit">,
): Promise<Readonly<Record<string, unknown>>> => {
  const documents = await Promise.all(visitKinds.map((kind) => cases.loadDocument(kind, visit.id)));
  const others = visitKinds.map((kind, index) => {
    const document = documents[index] ?? null;
    return [kind.replace("-", "_"), document === null ? null : formatStoredDocument(document)];
  });
  return { visit: formatStoredDocument(visit), ...Object.fromEntries(others) };
};

/** The workshop's settings, which every page of a case asks for; null where nobody has saved any. */
const describeSettings = async (cases: CaseStore): Promise<unknown> => {
  const settings = await cases.loadDocument("settings", settingsId);
  return settings === null ? null : formatStoredDocument(settings);
};

/** Visits of all cars, oldest first, by car. */
const visitsByCar = (visits: readonly StoredDocument<"visit">[]): ReadonlyMap<string, StoredDocument<"visit">[]> => {
  const byCar = new Map<string, StoredDocument<"visit">[]>();
  const ordered = visits.toSorted((one, other) =>
    one.body.date === other.body.date ? (one.id < other.id ? -1 : 1) : one.body.date < other.body.date ? -1 : 1,
  );
  for (const visit of ordered) byCar.set(visit.body.car, [...(byCar.get(visit.body.car) ?? []), visit]);
  return byCar;
};

/** Cars: all with their latest visit, and one with everything on record about it. */
export const addCarRoutes = (app: FastifyInstance, { cases }: CaseRecords): void => {
  app.get("/api/cars", async () => {
    const visits = visitsByCar(await cases.listDocuments("visit"));
    const plans = new Map((await cases.listDocuments("plan")).map(({ id, body }) => [id, body]));
    return {
      settings: await describeSettings(cases),
      cars: (await cases.listDocuments("car")).map((car) => {
        const own = visits.get(car.id) ?? [];
        const latest = own.at(-1);
        return {
          ...formatStoredDocument(car),
          visits: own.length,
          latest_visit: latest === undefined ? null : formatStoredDocument(latest),
          today:
            latest === undefined ? null : formatCarToday(computeCarToday(latest.body, plans.get(latest.id) ?? null)),
        };
      }),
    };
  });

  app.get<{ Params: { id: string } }>("/api/cars/:id", async (request, reply) => {
    const { id } = request.params;
    const car = await cases.loadDocument("car", id);
    if (car === null) return refuse(reply, 404, [unknownCar(id.slice(0, 80), "id")]);
    const visits = await cases.listVisits(id);
    const looks = await cases.loadLooks({ car: id });
    return reply.header("cache-control", "no-cache").send({
      settings: await describeSettings(cases),
      car: formatStoredDocument(car),
      visits: await Promise.all(visits.map((visit) => describeVisit(cases, visit))),
      looks: looks.map((look) => ({ sequence: look.sequence, ...formatStoredLook(look) })),
    });
  });
};
