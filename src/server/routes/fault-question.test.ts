import { describe, expect, it } from "vitest";
import type { FaultQuestion } from "#casework";
import { formatSheetFindings, formatSheetQuestion, parseFamily, parseSheetQuestion } from "#contract";
import { demoFamilySheets } from "#demo";

const parsed = parseFamily(structuredClone(demoFamilySheets["ouzel-saloon"]));
if ("findings" in parsed) throw new Error("no family");
const { family } = parsed;
const asked = (fault: FaultQuestion["fault"]) =>
  ({
    kind: "fault",
    family,
    question: {
      corner: "rear-left",
      position: "rear-left/trailing-link/inner-bush",
      fault,
      condition: { contactRise: 0.02, rack: 0, braking: 2000, lateral: -300, drive: 0 },
    },
  }) as const;

describe("the question of a fault sheet", () => {
  it.each<FaultQuestion["fault"]>([
    { kind: "torn", grade: 2 },
    { kind: "loose", play: 0.001 },
    { kind: "loose", play: 0.001, assumed: true },
    { kind: "firmer", factor: 2 },
    { kind: "firmer", hardness: { from: 55, to: 65 } },
    { kind: "firmer", hardness: { from: null, to: 65 } },
  ])("comes back as it was asked: $kind", (fault) => {
    const read = parseSheetQuestion(JSON.stringify(formatSheetQuestion(asked(fault))));
    if ("findings" in read) throw new Error(JSON.stringify(read.findings));
    expect(read.value.families).toEqual([{ path: "family", id: family.id }]);
    expect(read.value.withFamilies([family])).toEqual(asked(fault));
  });

  it("carries units in its keys", () => {
    expect(formatSheetQuestion(asked({ kind: "loose", play: 0.001 }))).toMatchObject({
      fault: { play_mm: 1 },
      condition: { contact_rise_mm: 20, braking_n: 2000 },
    });
  });

  it("is refused with everything that is wrong", () => {
    const wrong = parseSheetQuestion(
      '{"sheet": "fault", "family": "a", "corner": "rear", "position": 5, "fault": {"kind": "loose", "play": 1}, "condition": {"braking_kn": 2}}',
    );
    expect("findings" in wrong ? wrong.findings.map(({ code, path }) => `${code} ${path}`) : []).toEqual([
      "key-unit fault.play",
      "key-unit condition.braking_kn",
      "unknown-word corner",
      "wrong-type position",
      "missing-key fault.play_mm",
    ]);
  });

  it.each([
    ["both a factor and a hardness", { factor: 2, new_hardness_shore_a: 65 }, ["one-of-two fault.factor"]],
    ["neither", {}, ["one-of-two fault.factor"]],
    ["the old hardness alone", { old_hardness_shore_a: 55 }, ["one-of-two fault.factor"]],
    ["a hardness in words", { new_hardness_shore_a: "65" }, ["wrong-type fault.new_hardness_shore_a"]],
  ])("is refused where a firmer part is told by %s", (_, keys, expected) => {
    const sent = { ...formatSheetQuestion(asked({ kind: "firmer", factor: 2 })), fault: { kind: "firmer", ...keys } };
    const wrong = parseSheetQuestion(JSON.stringify(sent));
    expect("findings" in wrong ? wrong.findings.map(({ code, path }) => `${code} ${path}`) : []).toEqual(expected);
  });

  it("says over travel what is wrong with a firmer line under the key of that line", () => {
    const objection = { code: "out-of-range", got: "", needed: "", hint: "" };
    const paths = ["fault.factor", "fault.hardness.from", "fault.hardness.to", "fault.grade"];
    const said = formatSheetFindings(
      "travel",
      paths.map((path) => ({ ...objection, path })),
    );
    expect(said.map(({ path }) => path)).toEqual([
      "firmer.factor",
      "firmer.old_hardness_shore_a",
      "firmer.new_hardness_shore_a",
      "torn.grade",
    ]);
  });

  it("says what casework objects to under the keys that were sent", () => {
    const objection = { code: "out-of-range", got: "", needed: "", hint: "" };
    const paths = ["fault.play", "fault.hardness.to", "condition.contactRise", "position"].map((path) => ({
      ...objection,
      path,
    }));
    expect(formatSheetFindings("fault", paths).map(({ path }) => path)).toEqual([
      "fault.play_mm",
      "fault.new_hardness_shore_a",
      "condition.contact_rise_mm",
      "position",
    ]);
  });
});
