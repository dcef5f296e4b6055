import { describe, expect, it } from "vitest";
import { dayBefore, demoId, momentOf } from "./demo-id.ts";

describe("days and ids of the demo workshop", () => {
  it.each([
    ["2031-05-14", 0, "2031-05-14"],
    ["2031-05-14", 455, "2030-02-13"],
    ["2028-03-01", 1, "2028-02-29"],
    ["2100-03-01", 1, "2100-02-28"],
    ["2031-12-31", -1, "2032-01-01"],
  ])("%s less %d days is %s, as the platform's calendar has it", (today, days, expected) => {
    expect(dayBefore(today, days)).toBe(expected);
    const platform = new Date(Date.parse(`${today}T00:00:00Z`) - days * 86_400_000).toISOString().slice(0, 10);
    expect(expected).toBe(platform);
  });

  it("an id begins with the milliseconds of its moment", () => {
    const [first = "", second = ""] = demoId("2031-05-14", 95, 7).split("-");
    expect(Number.parseInt(first + second, 16)).toBe(Date.parse(momentOf("2031-05-14", 95)));
    expect(momentOf("2031-05-14", 95)).toBe("2031-05-14T09:35:00Z");
  });
});
