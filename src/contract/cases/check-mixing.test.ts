import { describe, expect, it } from "vitest";
import { checkMixing } from "./check-mixing.ts";

describe("real and invented cars", () => {
  it.each([
    [true, true],
    [false, false],
    [true, null],
    [false, null],
  ])("invented: %s goes with a workshop that is invented: %s", (invented, standing) => {
    expect(checkMixing(invented, standing, "document.invented")).toEqual([]);
  });

  it.each([
    [true, false, /data folder of its own/],
    [false, true, /--empty/],
  ])("invented: %s is refused where the workshop is invented: %s", (invented, standing, hint) => {
    const [finding] = checkMixing(invented, standing, "document.invented");
    expect(finding).toMatchObject({ code: "mixed-workshop", path: "document.invented" });
    expect(finding?.hint).toMatch(hint);
  });
});
