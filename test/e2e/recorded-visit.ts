import { expect, inject } from "vitest";

/** A document or look as it goes over the wire. */
type Wire = Readonly<Record<string, unknown>>;

const send = async (path: string, init: RequestInit): Promise<unknown> => {
  const response = await fetch(`${inject("address")}${path}`, init);
  const text = await response.text();
  expect(response.ok, text).toBe(true);
  return JSON.parse(text);
};

/** Asks the program under test for JSON. */
export const ask = (path: string): Promise<unknown> => send(path, {});

/** Saves a new document. */
export const putNew = (kind: string, id: string, document: Wire): Promise<unknown> =>
  send(`/api/documents/${kind}/${id}`, {
    method: "PUT",
    headers: { "content-type": "application/json", "if-none-match": "*" },
    body: JSON.stringify({ by: "I. Marden", document }),
  });

const uuidOf = (run: number, n: number): string =>
  `01890a5d-ac96-774b-bcce-${run.toString(16).padStart(4, "0")}${n.toString(16).padStart(8, "0")}`;

/** Stores looks of a visit in their order; `run` tells the looks of one test from those of another. */
export const putLooks = async (car: string, visit: string, run: number, looks: readonly Wire[]): Promise<void> => {
  const sent = looks.map((look, i) => ({
    id: uuidOf(run, i + 1),
    car,
    visit,
    who: "I. Marden",
    at: "2026-03-12T00:00:00Z",
    ...look,
  }));
  const { answers } = (await send("/api/looks", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ looks: sent }),
  })) as { readonly answers: readonly { readonly outcome: string }[] };
  expect(answers.map(({ outcome }) => outcome)).toEqual(sent.map(() => "stored"));
};

/** An invented car with one visit that stands at its findings. */
export const putCarAndVisit = async (id: string, family: string, more: Wire = {}): Promise<void> => {
  await putNew("car", id, {
    registration: "UB 204",
    name: "Ouzel saloon, 2014",
    year: 2014,
    family,
    variants: [],
    distance_unit: "km",
    odometer_offset_km: 0,
    invented: true,
  });
  await putNew("visit", id, {
    car: id,
    odometer_km: 128_440,
    date: "2026-03-12",
    by: "I. Marden",
    done: ["enquiry", "car", "readings", "underside"],
    waits: [],
    settled: true,
    closed: false,
    ...more,
  });
};
