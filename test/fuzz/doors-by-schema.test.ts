import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { codes } from "../../src/contract/codes.ts";
import { askDoor, askDoorText, type DoorAnswer, doors, jsonSchemaOf } from "../../src/contract/index.ts";
import { arbitraryOf } from "./arbitrary-of-schema.ts";

/** Demands an output or findings that say where, what came and what was needed. */
const demandAnswer = (answer: DoorAnswer): void => {
  if ("output" in answer) return;
  expect(answer.findings.length).toBeGreaterThan(0);
  for (const { code, path, got, needed, hint } of answer.findings) {
    expect(Object.keys(codes)).toContain(code);
    expect([typeof path, typeof got, typeof needed, typeof hint]).toEqual(["string", "string", "string", "string"]);
    expect(got.length * needed.length).toBeGreaterThan(0);
    expect(`${got} ${needed} ${hint}`).not.toMatch(/undefined|\[object|\bNaN mm/);
  }
};

describe.each(doors.map((door) => [door.id, door] as const))("%s, whatever comes", (id, door) => {
  it("answers any JSON with findings", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const answer = askDoor(id, value);
        expect("findings" in answer).toBe(true);
        demandAnswer(answer);
      }),
      { seed: 11, numRuns: 100, endOnFailure: true },
    );
  });

  it("answers any text", () => {
    fc.assert(
      fc.property(fc.string(), (text) => demandAnswer(askDoorText(id, text))),
      { seed: 12, numRuns: 100, endOnFailure: true },
    );
  });

  it("answers every document of the form of its schema, sensible or not", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(arbitraryOf(jsonSchemaOf(door.input)), (value) => demandAnswer(askDoor(id, value))),
      { seed: 13, numRuns: 200, endOnFailure: true },
    );
  });

  it("refuses a key nobody reads wherever an object stands", () => {
    const open = JSON.stringify(jsonSchemaOf(door.input)).match(
      /"type":"object"(?:(?!"type":"object").)*?"additionalProperties":(?:true|\{\})/g,
    );
    expect(open).toBeNull();
  });
});
