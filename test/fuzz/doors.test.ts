import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { askDoor, type Finding, findDoor } from "#contract";
import { mutate, mutations } from "./mutate.ts";
import { makeValidInputs } from "./valid-inputs.ts";

const valid = makeValidInputs();

/** Everything that is wrong with a finding itself. */
function flawsOf(finding: Finding): readonly string[] {
  const keys = ["code", "path", "got", "needed", "hint"] as const;
  return [
    ...keys.filter((key) => typeof finding[key] !== "string").map((key) => `${key} is not text`),
    ...(["code", "got", "needed"] as const).filter((key) => finding[key] === "").map((key) => `${key} is empty`),
    ...(/^[a-z0-9]+(-[a-z0-9]+)*$/.test(finding.code) ? [] : [`code ${finding.code}`]),
    ...(/\b(NaN|undefined|null|\[object)/.test(`${finding.needed} ${finding.hint}`)
      ? [`words of ${finding.code}`]
      : []),
  ];
}

describe("valid requests", () => {
  it.each(valid.map((v) => [v.door, v.layout, v] as const))("%s answers for %s", (_, __, { door, input }) => {
    const answer = askDoor(door, input);
    expect("findings" in answer ? answer.findings : []).toEqual([]);
    if ("output" in answer) expect(findDoor(door)?.output.safeParse(answer.output).success).toBe(true);
  });
});

describe("requests with one to four random changes", () => {
  it("are answered in the form promised or refused with findings; nothing throws", { timeout: 300_000 }, () => {
    let answered = 0;
    let refused = 0;
    fc.assert(
      fc.property(fc.constantFrom(...valid), mutations, ({ door, input }, changes) => {
        const changed = mutate(input, changes);
        const before = structuredClone(changed);
        const answer = askDoor(door, changed);
        expect(changed).toEqual(before);
        if ("output" in answer) {
          answered++;
          const checked = findDoor(door)?.output.safeParse(answer.output);
          expect(checked?.error?.issues ?? []).toEqual([]);
        } else {
          refused++;
          expect(answer.findings.length).toBeGreaterThan(0);
          expect(answer.findings.flatMap(flawsOf)).toEqual([]);
        }
      }),
      { seed: 20_240_917, numRuns: 1200 },
    );
    expect(answered).toBeGreaterThan(300);
    expect(refused).toBeGreaterThan(300);
  });
});
