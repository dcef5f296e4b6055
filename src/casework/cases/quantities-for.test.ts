import { expect, test } from "vitest";
import { loadStateSays } from "./load-state-words.ts";
import { quantitiesFor } from "./quantities-for.ts";
import { standardReadings } from "./standard-readings.ts";

test("a place that is one of several of its kind has its own quantity", () => {
  expect(quantitiesFor({ kind: "disc", detail: "runout" })).toEqual(["run-out"]);
  expect(quantitiesFor({ kind: "disc", detail: "surface" })).toEqual([]);
  expect(quantitiesFor({ kind: "bush", detail: "inner-bush" })[0]).toBe("lost-travel");
});

test("standard readings at places of the drawing are among what can be read there", () => {
  const kinds = { disc: "disc", pads: "pads", tyre: "tyre" } as const;
  for (const { place, quantity } of standardReadings()) {
    const [, item, detail] = place.split("/");
    const kind = kinds[item as keyof typeof kinds];
    if (kind !== undefined && detail !== undefined) expect(quantitiesFor({ kind, detail })).toContain(quantity);
  }
});

test("with a strut the hanging wheel shows the lower joint, elsewhere it may hide it", () => {
  const joint = { kind: "ball-joint" } as Parameters<typeof loadStateSays>[0];
  const axle = (layout: string) => ({ layout }) as Parameters<typeof loadStateSays>[1];
  expect(loadStateSays(joint, axle("strut"), "hanging")).toMatch(/carries no spring/);
  expect(loadStateSays(joint, axle("double-wishbone"), "hanging")).toMatch(/hides it/);
});
