import { describe, expect, it } from "vitest";
import { alternativeOf, asAlternative, formAt, newEntry } from "./field-form.ts";

const oneOf = (keys: readonly string[]) => {
  const form = formAt(keys);
  const inside = form.kind === "list" ? form.entry : form;
  if (inside.kind !== "one-of") throw new Error(`${keys.join(".")} is no choice but ${inside.kind}`);
  return inside;
};

describe("forms made from the schema", () => {
  it.each([
    [["kerb_mass_kg"], { kind: "number", low: 0, high: 10_000 }],
    [["front", "layout"], { kind: "word" }],
    [["front", "driven"], { kind: "yes-no" }],
    [["front", "wheel", "centre_mm"], { kind: "figures" }],
    [["front", "links", "inner_mm"], { kind: "point" }],
    [["front", "defaults", "torn_share", "plan"], { kind: "range" }],
    [["front", "subframe_mm"], { kind: "piece" }],
    [["work", "operations", "access"], { kind: "words", numeric: false }],
    [["work", "operations", "cautions"], { kind: "words", numeric: true }],
    [["work", "alignment", "camber_deg"], { kind: "figures" }],
    [["work", "parts"], { kind: "list" }],
    [["format"], { kind: "fixed", value: "underbench-family-1" }],
  ] as const)("%j", (keys, form) => expect(formAt(keys)).toMatchObject(form));

  it("say what must be there", () => {
    const form = formAt(["front", "spring"]);
    const required = form.kind === "group" ? form.fields.filter((field) => field.required).map(({ key }) => key) : [];
    expect(required).toEqual(["body_mm", "seat", "rate_n_per_mm"]);
  });

  it("tell a limit by its quantity, and keep what the other one has too", () => {
    const form = oneOf(["work", "limits"]);
    const limit = { quantity: "thickness", place: "disc/thickness", lower_mm: 22, owner: "maker" };
    expect(alternativeOf(form, limit)?.fields.map(({ key }) => key)).toContain("lower_mm");
    expect(asAlternative(form, limit, "pressure")).toEqual({
      quantity: "pressure",
      place: "disc/thickness",
      owner: "maker",
    });
  });

  it("tell a stage by its key, and keep its figure", () => {
    const form = oneOf(["work", "operations", "fasteners", "stages"]);
    expect(alternativeOf(form, { angle_deg: 90 })?.word).toBe("angle_deg");
    expect(asAlternative(form, { torque_nm: 90 }, "angle_deg")).toEqual({ angle_deg: 90 });
    expect(newEntry(form)).toEqual({ torque_nm: null });
  });

  it("refuse a key no sheet has", () => expect(() => formAt(["front", "wheels"])).toThrow("front.wheels"));
});
