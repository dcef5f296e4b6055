import { describe, expect, it } from "vitest";
import { drawBallSection, drawBushSection } from "./bush-section.ts";

const STATES = ["sound", "torn", "loose", "firmer"] as const;

describe("sections", () => {
  it("show each state of a bush in a shape of its own", () => {
    const drawn = STATES.map((state) => JSON.stringify(drawBushSection([0, 0], 60, state)));
    expect(new Set(drawn).size).toBe(4);
  });

  it("hang a torn bush's sleeve off the middle and keep a sound one's in it", () => {
    const sleeve = (state: "sound" | "torn") =>
      drawBushSection([100, 100], 60, state).find((mark) => mark.kind === "path" && mark.stroke?.width === 2);
    const startOf = (mark: ReturnType<typeof sleeve>) => (mark?.kind === "path" ? mark.d.split("a")[0] : "");
    expect(startOf(sleeve("sound"))).toBe("M78.4 100");
    expect(startOf(sleeve("torn"))).not.toBe("M78.4 100");
  });

  it("give a loose ball room in its housing", () => {
    expect(JSON.stringify(drawBallSection([0, 0], 50, "loose"))).not.toBe(
      JSON.stringify(drawBallSection([0, 0], 50, "sound")),
    );
  });
});
