import { describe, expect, it } from "vitest";
import { symptoms } from "../suspects/symptom-table.ts";
import { hearRemarks, notTakenUpWords } from "./hear-remarks.ts";
import { splitRemarks } from "./split-remarks.ts";

describe("what an owner says", () => {
  it("is taken apart into single remarks, and when something is so stays with it", () => {
    expect(splitRemarks("it pulls to the left when I brake, and something clunks at the rear")).toEqual([
      "it pulls to the left when I brake",
      "something clunks at the rear",
    ]);
    expect(splitRemarks("When I brake, it pulls. Only when warm. Please check")).toEqual([
      "When I brake, it pulls, Only when warm",
    ]);
    expect(splitRemarks("")).toEqual([]);
    expect(splitRemarks("since the new tyres")).toEqual(["since the new tyres"]);
  });

  it("is offered complaints remark by remark, so that a short one is not drowned by a long one", () => {
    const heard = hearRemarks(
      "since the new tyres the steering wheel shakes when braking from 120, it drifts to the right and the rear clunks over bumps",
      symptoms,
      [],
    );
    expect(heard.map(({ offered }) => offered[0]?.id)).toEqual([
      "steering-wheel-shakes-under-braking",
      "pulls-at-steady-speed",
      "clunk-over-bumps-rear",
    ]);
  });

  it("is quoted where it was not taken up, and only that", () => {
    const words = "it pulls to the left when I brake, and something clunks at the rear";
    expect(notTakenUpWords(words, symptoms, ["pulls-under-braking"])).toBe(
      "Not taken up yet: \u201csomething clunks at the rear\u201d.",
    );
    expect(notTakenUpWords(words, symptoms, ["pulls-under-braking", "clunk-over-bumps-rear"])).toBe("");
  });

  it("counts as taken up where somebody chose from the whole list for words the table does not know", () => {
    const words = "the grumblefoozle is odd; it pulls when I brake";
    expect(notTakenUpWords(words, symptoms, ["pulls-under-braking"])).toContain("grumblefoozle");
    expect(notTakenUpWords(words, symptoms, ["pulls-under-braking", "spongy-pedal"])).toBe("");
  });
});
