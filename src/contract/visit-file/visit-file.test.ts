import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { editSheet } from "../../../test/family-sheets/edit-sheet.ts";
import { parseFamily } from "../family/index.ts";
import { checkPlaces, parseVisitText, visitJsonSchema } from "./index.ts";

const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8"));
const ouzel = read("../../demo/families/ouzel-saloon.json") as object;
const example = read("../../../docs/examples/visit.json");
const edited = (edits: Parameters<typeof editSheet>[1]) => parseVisitText(JSON.stringify(editSheet(example, edits)));
const paths = (parsed: ReturnType<typeof parseVisitText>): readonly string[] =>
  "findings" in parsed ? parsed.findings.map((f) => f.path) : [];

describe("a visit file", () => {
  it("has the schema that stands in docs, and the example keeps it", () => {
    const schema = visitJsonSchema();
    expect(read("../../../docs/visit.schema.json")).toEqual(schema);
    const validator = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]);
    expect(validator.safeParse(example).success).toBe(true);
    expect(validator.safeParse(editSheet(example, [{ set: "visit.odometer", to: 1 }])).success).toBe(false);
  });

  it("reads the example; what a look does not say is taken from its visit", () => {
    const parsed = parseVisitText(JSON.stringify(example));
    if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
    const { family, record } = parsed.value;
    expect(family).toEqual({ onFile: "ouzel-saloon" });
    expect(record.visit.odometerKm).toBe(128_440);
    const [torn, travel] = record.looks;
    expect(torn).toMatchObject({ who: "I. Marden", at: "2026-03-12T00:00:00Z", sequence: 1 });
    expect(travel?.content).toEqual({
      kind: "reading",
      quantity: "lost-travel",
      value: 0.0046,
      u: 0.00025,
      point: null,
    });
    expect(record.past).toHaveLength(1);
  });

  it("says every mistake at once, those of a sheet inside it too, with the nearest key", () => {
    const parsed = edited([
      {
        set: "family",
        to: { kind: "sheet", sheet: { ...ouzel, wheelbase_m: 2.8 } },
      },
      { set: "visit.odometre_km", to: 5 },
      { set: "looks[1].content.value_mm", to: "4.6" },
      { set: "enquiry.symptoms[0].symptom", to: "pulls-under-breaking" },
      { set: "plan", to: { visits: [], declined: [], agreed: [], fixed: [], horizon_miles: 9 } },
    ]);
    expect(paths(parsed)).toEqual(
      expect.arrayContaining([
        "visit.odometre_km",
        "looks[1].content.value_mm",
        "enquiry.symptoms[0].symptom",
        "plan.horizon_miles",
        "family.sheet.wheelbase_m",
      ]),
    );
    const said = "findings" in parsed ? parsed.findings : [];
    expect(said.find((f) => f.path === "visit.odometre_km")?.hint).toContain("odometer_km");
    expect(said.find((f) => f.path === "enquiry.symptoms[0].symptom")?.hint).toContain("pulls-under-braking");
  });

  it("refuses a figure no car shows unless somebody stands by it", () => {
    expect(paths(edited([{ set: "looks[4].content.value_mm", to: 230 }]))).toEqual(["looks[4].content.value_mm"]);
    const confirmed = edited([
      { set: "looks[4].content.value_mm", to: 46 },
      { set: "looks[4].confirmed", to: true },
    ]);
    expect(paths(confirmed)).toEqual([]);
  });

  it("names the nearest place of the family", () => {
    const parsed = edited([{ set: "looks[0].place", to: "rear-left/trailing-link/iner-bush" }]);
    const family = parseFamily(ouzel);
    if ("findings" in parsed || "findings" in family) throw new Error("not read");
    expect(checkPlaces(parsed.value, family.family)).toMatchObject([
      { path: "looks[0].place", hint: "The nearest is rear-left/trailing-link/inner-bush." },
    ]);
  });

  it("refuses a sign where only readings are taken", () => {
    const parsed = edited([
      { set: "looks[0].place", to: "front-left/ride-height" },
      { set: "looks[0].content", to: { kind: "signs", signs: ["wet"] } },
    ]);
    const family = parseFamily(ouzel);
    if ("findings" in parsed || "findings" in family) throw new Error("not read");
    expect(checkPlaces(parsed.value, family.family)).toMatchObject([
      { code: "not-consistent", path: "looks[0].content", got: "signs at front-left/ride-height" },
    ]);
  });

  it("takes a silhouette, and says what no template fits", () => {
    const whole = edited([{ set: "family", to: { kind: "silhouette", silhouette: { rear_layout: "five-link" } } }]);
    expect(paths(whole)).toEqual([]);
    const wide = edited([{ set: "family", to: { kind: "silhouette", silhouette: { wheelbase_mm: 9000 } } }]);
    expect(paths(wide)).toContain("family.silhouette.wheelbase_mm");
  });
});
