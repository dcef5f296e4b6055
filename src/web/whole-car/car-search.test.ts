import { describe, expect, it } from "vitest";
import { heldWords, readWholeCarSearch } from "./car-search.ts";

describe("the address of the whole car", () => {
  it("says what it asked for beyond the sliders, and where that is held", () => {
    const { by, along } = readWholeCarSearch({ motion: "bend", by: "0.4", along: "-9" });
    expect(
      heldWords([
        { name: "sideways", unit: "g", asked: by, shown: 0.4 },
        { name: "along the car", unit: "g", asked: along, shown: -0.8 },
      ]),
    ).toBe("The address asked for more than is computed: along the car -9 g, held at -0.8 g.");
  });

  it("says nothing of what is shown as asked, or was not asked", () => {
    expect(
      heldWords([
        { name: "sideways", unit: "g", asked: -0.4, shown: -0.4 },
        { name: "along the car", unit: "g", asked: undefined, shown: 0 },
      ]),
    ).toBeNull();
  });
});
