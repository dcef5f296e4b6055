import { expect, test } from "vitest";
import { barScale } from "./limit-scale.ts";

test("a bar near nought begins there and holds limit and band with room beside", () => {
  const scale = barScale({ limits: [3.2], reading: { value: 4.6, expanded: 0.5 }, twin: null });
  expect(scale?.from).toBe(0);
  expect(scale?.to).toBeGreaterThan(5.1);
  expect(scale?.ticks).toContain(2);
  expect(scale?.share(3.2)).toBeLessThan(scale?.share(4.1) ?? 0);
});

test("a bar far from nought shows the stretch that counts, in few round steps", () => {
  const scale = barScale({ limits: [22], reading: { value: 21.5, expanded: 0.02 }, twin: 22.4 });
  expect(scale?.from).toBeGreaterThan(15);
  expect(scale?.ticks.length).toBeLessThanOrEqual(12);
  for (const value of [21.48, 21.52, 22, 22.4]) {
    expect(scale?.share(value)).toBeGreaterThan(0);
    expect(scale?.share(value)).toBeLessThan(1);
  }
});

test("a limit below nought is held too, and with nothing to hold there is no bar", () => {
  const scale = barScale({ limits: [-1.5, -0.5], reading: { value: -0.3, expanded: 0.1 }, twin: null });
  expect(scale?.from).toBeLessThan(-1.5);
  expect(scale?.to).toBeGreaterThan(-0.2);
  expect(barScale({ limits: [], reading: null, twin: null })).toBeNull();
});
