import { describe, expect, it } from "vitest";
import type { LookContent, SymptomEntry } from "#casework";
import { complaintWords } from "#casework";
import { positionsOf } from "#vehicle";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { look, ouzel, record, solver } from "./made-visit.ts";

const entry = (symptom: string): SymptomEntry => ({
  symptom,
  side: "unknown",
  axle: "unknown",
  conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking: null },
  since: null,
});
const two = [entry("clunk-over-bumps-rear"), entry("pulls-under-braking")];
const answers = (seen: readonly (readonly [string, LookContent])[], said: Parameters<typeof asked>[0] = []) =>
  appraiseVisit(
    record(
      seen.map(([place, content]) => look(place, content)),
      { enquiry: asked(said) },
    ),
    solver,
  ).complaints;
const asked = (suspects: NonNullable<NonNullable<ReturnType<typeof record>["enquiry"]>["suspects"]>) => ({
  words: "",
  symptoms: two,
  use: null,
  suspects,
});

describe("every complaint is answered", () => {
  it("not looked at yet, where nobody has", () => {
    expect(answers([]).map(({ state }) => state)).toEqual(["not-looked-at", "not-looked-at"]);
  });

  it("found, with where and what", () => {
    const [clunk, pull] = answers([["rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] }]]);
    expect(clunk?.state).toBe("found");
    expect(clunk && complaintWords(clunk)).toMatch(/^Clunk over bumps, rear: found.*rear left, .*web torn\.$/);
    // No cause of the table, and yet the linkage says that it pulls the car to one side.
    expect(pull && complaintWords(pull)).toBe(
      "Pulls under braking: found, and can be behind it: rear left, trailing link, front bush: web torn (computed: the car steps to the left).",
    );
    const [, dry] = answers([["rear-left/damper/leak", { kind: "signs", signs: ["wet-streams"] }]]);
    expect(dry?.state).toBe("not-looked-at");
  });

  it("begun, and then nothing found, once every place was looked at", () => {
    const places = positionsOf(ouzel()).filter(({ axle }) => axle === "rear");
    const sound = (ids: readonly string[]) => ids.map((id) => [id, { kind: "nothing-seen" }] as const);
    expect(answers(sound([places[0]?.id ?? "", "rear-left/bar-link"]))[0]?.state).toBe("begun");
    const all = positionsOf(ouzel()).map(({ id }) => id);
    expect(answers(sound(all))[0]?.state).toBe("nothing-found");
  });

  it("the cause that was taken, once somebody has accepted one", () => {
    const word = { cause: "bar-link", word: "accepted", reason: null, by: "MK", at: "2031-05-14T09:00:00Z" } as const;
    const [clunk] = answers([], [word]);
    expect([clunk?.state, clunk?.words]).toEqual(["cause-taken", "taken as its cause: anti-roll-bar link play"]);
  });
});
