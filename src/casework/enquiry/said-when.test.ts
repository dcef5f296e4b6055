import { expect, test } from "vitest";
import { orderConditions, readSaidWhen } from "./said-when.ts";

const first = (words: string) => orderConditions(readSaidWhen(words))[0];

test("conditions are asked for in the order of what was said", () => {
  expect(orderConditions(readSaidWhen("the wheel shakes at 110"))).toEqual([
    "speed",
    "steering",
    "braking",
    "temperature",
    "load",
  ]);
  expect(first("it judders when I brake from motorway speed")).toBe("speed");
  expect(first("it pulls when braking")).toBe("braking");
  expect(first("clunks when turning")).toBe("steering");
  expect(first("squeals in the morning, cold")).toBe("temperature");
  expect(first("it just feels wrong")).toBe("braking");
});

test("a figure that counts something else is no speed", () => {
  expect(readSaidWhen("at 20 it is fine").speed).toBe(false);
  expect(readSaidWhen("new tyres at 90 k").speed).toBe(false);
  expect(readSaidWhen("vibrates between 90 and 130").speed).toBe(true);
  expect(readSaidWhen("vibrates from 70 mph").speed).toBe(true);
});
