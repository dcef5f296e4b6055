import { expect, test } from "vitest";
import type { SymptomEntry } from "../cases/documents.ts";
import type { PlaceFinding } from "../cases/place-finding.ts";
import { causes } from "./cause-table.ts";
import { feltAxle, fitToLayout, placesFor } from "./fit-to-car.ts";
import { symptoms } from "./symptom-table.ts";
import { findSuspects, tellingLooks } from "./visit-suspects.ts";

const place = (id: string, kind: PlaceFinding["kind"], axle: "front" | "rear", grade: PlaceFinding["grade"] = null) =>
  ({
    place: id,
    kind,
    axle,
    side: "left",
    label: id,
    found: "",
    grade,
    reasons: [],
    looks: null,
  }) as unknown as PlaceFinding;

/** A strut front: no upper arm. */
const strut = [
  place("front-left/bar-link", "bar-link", "front"),
  place("rear-left/bar-link", "bar-link", "rear"),
  place("front-left/lower-arm/rear-bush", "bush", "front"),
  place("front-left/lower-arm/ball-joint", "ball-joint", "front"),
  place("front-left/damper/top-mount", "strut-mount", "front"),
];
const clunk = symptoms.find(({ id }) => id === "clunk-over-small-sharp-bumps-front");
if (clunk === undefined) throw new Error("no such complaint");
const entry = { symptom: clunk.id, side: "unknown", axle: "front" } as unknown as SymptomEntry;

test("a cause this layout has no place for is not suspected, and its share goes to the others", () => {
  const fitted = fitToLayout(clunk, strut);
  const ids = fitted.causes.map(([cause]) => cause);
  expect(ids).not.toContain("upper-inner-bush");
  expect(ids).toContain("arm-bolt-loose");
  expect(fitted.causes.reduce((sum, [, share]) => sum + share, 0)).toBeCloseTo(100, 9);
  expect(fitToLayout(clunk, [])).toBe(clunk);
  expect(findSuspects([entry], strut).suspects.map(({ cause }) => cause)).not.toContain("upper-inner-bush");
});

test("a complaint felt at the front lists the places of the front only", () => {
  const link = causes.find(({ id }) => id === "bar-link");
  if (link === undefined) throw new Error("no such cause");
  expect(placesFor(link, strut, "front").map((p) => p.place)).toEqual(["front-left/bar-link"]);
  expect(placesFor(link, strut, null)).toHaveLength(2);
  expect(feltAxle([entry, { ...entry, axle: "rear" }])).toBeNull();
  const found = findSuspects([entry], strut).suspects.find(({ cause }) => cause === "bar-link");
  expect(found?.places).toEqual(["front-left/bar-link"]);
});

test("a look that settles it with less than 1 % is not advised", () => {
  const look = (id: string, settles: number) => ({ id, settles });
  const next = { stop: null, looks: [look("a", 0.4), look("b", 0.009)] };
  const of = (given: unknown) =>
    tellingLooks({ next: given } as Parameters<typeof tellingLooks>[0]).map(({ id }) => id);
  expect(of(next)).toEqual(["a"]);
  expect(of({ ...next, looks: [look("b", 0.009)] })).toEqual([]);
  expect(of({ ...next, stop: "settled" })).toEqual([]);
});
