import { describe, expect, it } from "vitest";
import {
  degreesFromRadians,
  kmPerHourFromMetresPerSecond,
  metresFromMm,
  metresPerSecondFromKmPerHour,
  mmFromMetres,
  newtonsFromKn,
  newtonsPerMetreFromPerMm,
  perMmFromNewtonsPerMetre,
  radiansFromDegrees,
} from "./convert.ts";

describe("conversion", () => {
  it("knows what a unit is in another", () => {
    expect(metresFromMm(1234.5)).toBe(1.2345);
    expect(mmFromMetres(0.25)).toBe(250);
    expect(radiansFromDegrees(180)).toBeCloseTo(Math.PI, 15);
    expect(degreesFromRadians(Math.PI / 6)).toBeCloseTo(30, 13);
    expect(newtonsPerMetreFromPerMm(72)).toBe(72_000);
    expect(perMmFromNewtonsPerMetre(72_000)).toBe(72);
    expect(newtonsFromKn(1.5)).toBe(1500);
    expect(metresPerSecondFromKmPerHour(90)).toBe(25);
    expect(kmPerHourFromMetresPerSecond(30)).toBe(108);
  });

  it("comes back to where it began, to rounding", () => {
    for (const x of [-7.3, 0, 1e-9, 12.34, 98765.4321]) {
      expect(mmFromMetres(metresFromMm(x))).toBeCloseTo(x, 9);
      expect(degreesFromRadians(radiansFromDegrees(x))).toBeCloseTo(x, 9);
      expect(perMmFromNewtonsPerMetre(newtonsPerMetreFromPerMm(x))).toBeCloseTo(x, 9);
    }
  });
});
