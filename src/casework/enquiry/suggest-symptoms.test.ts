import { expect, test } from "vitest";
import { symptoms } from "../suspects/symptom-table.ts";
import { findSymptoms, suggestSymptoms } from "./suggest-symptoms.ts";

const offered = (words: string): readonly string[] => suggestSymptoms(words, symptoms).map(({ id }) => id);

test("what an owner says points to the complaint, whatever the ending of the word", () => {
  expect(offered("It pulls to the left when I brake, braking hard makes it worse")[0]).toBe("pulls-under-braking");
  expect(offered("there is a clunking from the rear over bumps")[0]).toBe("clunk-over-bumps-rear");
  expect(offered("the pedal sinks at the lights")[0]).toBe("pedal-sinks-while-held");
});

test("a shake at a speed is not one under braking, unless the brake is named", () => {
  expect(offered("the steering wheel shakes at 110")[0]).toBe("vibration-90-130-km-h-not-braking");
  expect(offered("the steering wheel shakes at 110 when I brake")[0]).toBe("steering-wheel-shakes-under-braking");
});

test("what is felt counts for more than where and when", () => {
  expect(offered("it wanders on the motorway")[0]).toBe("wanders-needs-steady-correction");
  expect(offered("it pulls when I brake")).not.toContain("grinding-under-braking");
  expect(offered("something at the rear").length).toBeGreaterThan(0);
});

test("a complaint is found however its words are spelled", () => {
  for (const words of ["a clonk at the rear over bumps", "klonk rear over bumps", "it clunck from the rear, bumps"])
    expect(offered(words)[0], words).toBe("clunk-over-bumps-rear");
  expect(offered("it pulls left when I hit the breaks")).toContain("pulls-under-braking");
  expect(offered("shudder through the stearing wheel")).toEqual(offered("shudder through the steering wheel"));
  expect(offered("a nocking from the front")).toEqual(offered("a knocking from the front"));
});

test("a like word that means something else offers nothing", () => {
  for (const words of ["please clean it", "the plank in the trunk", "wash it and bring it back"])
    expect(offered(words), words).toEqual([]);
});

test("words of no complaint offer none, and never more than six are offered", () => {
  expect(offered("please wash it")).toEqual([]);
  const everything = symptoms.flatMap(({ words }) => words).join(" ");
  expect(offered(everything).length).toBeLessThanOrEqual(6);
});

test("the whole list is searched by label and by word", () => {
  expect(findSymptoms("", symptoms)).toHaveLength(symptoms.length);
  expect(findSymptoms("drone", symptoms).map(({ id }) => id)).toEqual(["hum-rising-with-speed"]);
});
