import { describe, expect, it } from "vitest";
import { jsonSchemaOf } from "../refusal-schema.ts";
import { formatFamily, parseFamily, parseSilhouette, silhouetteSheet } from "./index.ts";

const said = (document: unknown): string[] => {
  const parsed = parseSilhouette(document);
  return "findings" in parsed ? parsed.findings.map(({ code, path }) => `${code} ${path}`) : ["read"];
};

describe("a silhouette sheet", () => {
  it("has about a dozen entries, all of which may be left out", () => {
    expect(Object.keys(silhouetteSheet.shape)).toHaveLength(13);
    expect(said({})).toEqual(["read"]);
    expect(jsonSchemaOf(silhouetteSheet).required).toBeUndefined();
  });

  it("says everything that is wrong at once, by the keys of the sheet", () => {
    expect(
      said({
        wheelbase_mm: 2.7,
        front_track: 1550,
        kerb_mass_kg: "heavy",
        rear_layout: "strut",
        driven_axle: "all",
      }).sort(),
    ).toEqual([
      "key-unit front_track",
      "out-of-range wheelbase_mm",
      "unknown-word driven_axle",
      "unknown-word rear_layout",
      "wrong-type kerb_mass_kg",
    ]);
    expect(said({ tyre_size: "huge", front_track_mm: 1320, rear_track_mm: 1600 }).sort()).toEqual([
      "tracks-too-different rear_track_mm",
      "tyre-size-unreadable tyre_size",
    ]);
  });

  it("made by an older template stays readable, whatever levers its bar then had; read by somebody it is a slip", () => {
    const made = parseSilhouette({ front_layout: "double-wishbone", rear_layout: "five-link" });
    if ("findings" in made) throw new Error(JSON.stringify(made.findings));
    const sheet = formatFamily(made.family);
    const { bar, defaults } = sheet.rear;
    const upright = bar?.path_mm.map(([x, y, z], i) => (i === bar.path_mm.length - 1 ? [x - 100, y, z] : [x, y, z]));
    const codes = (origin: string) => {
      const rear = { ...sheet.rear, bar: { ...bar, path_mm: upright }, defaults: { ...defaults, origin } };
      const parsed = parseFamily({ ...sheet, rear });
      return "findings" in parsed ? parsed.findings.map(({ code }) => code) : [];
    };
    expect(codes("template")).toEqual([]);
    expect(codes("tape")).toEqual(["bar-twists-too-far"]);
  });

  it("says what to do about a layout that is not offered, and about metres", () => {
    const hintOf = (document: unknown): string | undefined => {
      const parsed = parseSilhouette(document);
      return "findings" in parsed ? parsed.findings[0]?.hint : undefined;
    };
    expect(hintOf({ rear_layout: "twist-beam" })).toMatch(/^Not offered yet\. Take no other/);
    expect(hintOf({ rear_layout: "strut" })).not.toMatch(/offered/);
    expect(hintOf({ wheelbase_mm: 2.7 })).toMatch(/2700/);
    expect(hintOf({ front_lowered_mm: 90 })).not.toMatch(/metres:/);
  });

  it("makes a family of the rung asked for", () => {
    const parsed = parseSilhouette({ name: "Wren", rung: "layout", front_lowered_mm: 15 });
    if ("findings" in parsed) throw new Error("refused");
    expect([parsed.family.id, parsed.family.front.rung, parsed.family.rear.rung]).toEqual(["wren", "layout", "layout"]);
  });
});
