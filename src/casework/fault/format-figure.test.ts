import { expect, test } from "vitest";
import { formatReading } from "../cases/reading-reasons.ts";
import { formatNumber, writtenDecimals } from "./format-figure.ts";

test("halves go away from nought by their decimal digits, not by the double below them", () => {
  expect(formatNumber(1.15, 1)).toBe("1.2");
  expect(formatNumber(2.05, 1)).toBe("2.1");
  expect(formatNumber(5.25, 1)).toBe("5.3");
  expect(formatNumber(-1.005, 2)).toBe("−1.01");
  expect(formatNumber(205_000 * 1e-5, 1)).toBe("2.1");
  expect(formatNumber(0.5, 0)).toBe("1");
});

test("everything else is rounded as ever", () => {
  expect(formatNumber(1.1499, 1)).toBe("1.1");
  expect(formatNumber(-0.004, 2)).toBe("0.00");
  expect(formatNumber(123_456_789.25, 1)).toBe("123456789.3");
  expect(formatNumber(0, 2)).toBe("0.00");
  expect(formatNumber(3e-9, 1)).toBe("0.0");
  expect(formatNumber(Number.NaN, 1)).toBe("NaN");
});

test("digits as written, without the noise of a change of unit", () => {
  expect([2.05, 205_000 * 1e-5, 230, 0.1 + 0.2, 1e-7, 0].map(writtenDecimals)).toEqual([2, 2, 0, 1, 7, 0]);
});

test("a reading never shows fewer digits than were typed, nor those of a computed mean", () => {
  expect(formatReading("pressure", 205_000)).toBe("2.05");
  expect(formatReading("pressure", 230_000)).toBe("2.3");
  expect(formatReading("ride-height", 0.3825)).toBe("382.5");
  expect(formatReading("pad-thickness", 0.025 / 3)).toBe("8.3");
  expect(formatReading("camber", (-1.2 * Math.PI) / 180)).toBe("−1.20");
});
