import { describe, expect, it } from "vitest";
import type { FaultQuestion } from "#casework";
import { formatFaultQuestion, formatQuestionFindings, parseFaultQuestion } from "./fault-question.ts";

const question = (fault: FaultQuestion["fault"]): FaultQuestion => ({
  corner: "rear-left",
  position: "rear-left/trailing-link/inner-bush",
  fault,
  condition: { contactRise: 0.02, rack: 0, braking: 2000, lateral: -300, drive: 0 },
});

describe("the question of a fault sheet", () => {
  it.each<FaultQuestion["fault"]>([
    { kind: "torn", grade: 2 },
    { kind: "loose", play: 0.001 },
    { kind: "loose", play: 0.001, assumed: true },
    { kind: "firmer", factor: 2 },
  ])("comes back as it was asked: $kind", (fault) => {
    const asked = { family: "a-line", question: question(fault) };
    expect(parseFaultQuestion(JSON.stringify(formatFaultQuestion(asked)))).toEqual({ value: asked });
  });

  it("carries units in its keys", () => {
    expect(formatFaultQuestion({ family: "a", question: question({ kind: "loose", play: 0.001 }) })).toMatchObject({
      fault: { play_mm: 1 },
      condition: { contact_rise_mm: 20, braking_n: 2000 },
    });
  });

  it("is refused with everything that is wrong", () => {
    const parsed = parseFaultQuestion(
      '{"family": "a", "corner": "rear", "position": 5, "fault": {"kind": "loose", "play": 1}, "condition": {"braking_kn": 2}}',
    );
    expect("findings" in parsed ? parsed.findings.map(({ code, path }) => `${code} ${path}`) : []).toEqual([
      "key-unit fault.play",
      "key-unit condition.braking_kn",
      "unknown-word corner",
      "wrong-type position",
      "missing-key fault.play_mm",
    ]);
  });

  it("says what casework objects to under the keys that were sent", () => {
    const objection = { code: "out-of-range", got: "", needed: "", hint: "" };
    const paths = ["fault.play", "condition.contactRise", "position"].map((path) => ({ ...objection, path }));
    expect(formatQuestionFindings(paths).map(({ path }) => path)).toEqual([
      "fault.play_mm",
      "condition.contact_rise_mm",
      "position",
    ]);
  });
});
