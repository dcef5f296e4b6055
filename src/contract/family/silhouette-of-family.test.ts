import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Family, leftOutFigures, silhouetteLayouts } from "#vehicle";
import { formatFamily } from "./format-family.ts";
import { parseFamily } from "./parse-family.ts";
import { correctedSilhouette, silhouetteOfFamily } from "./silhouette-of-family.ts";
import { parseSilhouette, type SilhouetteSheet } from "./silhouette-sheet.ts";

/** The family of these entries, kept in a file and read again. */
const kept = (sheet: SilhouetteSheet): Family => {
  const made = parseSilhouette(sheet);
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  const read = parseFamily(JSON.parse(JSON.stringify(formatFamily(made.family))));
  if ("findings" in read) throw new Error(JSON.stringify(read.findings));
  return read.family;
};

const entered: SilhouetteSheet = {
  name: "Wagtail van",
  front_layout: "double-wishbone",
  rear_layout: "trailing-arm",
  wheelbase_mm: 2853.5,
  front_track_mm: 1561,
  rear_track_mm: 1572,
  tyre_size: "215/55 R17",
  kerb_mass_kg: 1623,
  front_weight_share: 0.545,
  driven_axle: "both",
  front_lowered_mm: 12.5,
  rear_lowered_mm: -8,
};

describe("the entries a family was begun from", () => {
  it("come back to the figure", () => {
    expect(silhouetteOfFamily(kept(entered))).toEqual(entered);
  });

  it("come back for every pair of layouts and each driven axle", () => {
    for (const front_layout of silhouetteLayouts.front)
      for (const rear_layout of silhouetteLayouts.rear)
        for (const driven_axle of ["front", "rear", "both"] as const) {
          const sheet = { ...entered, front_layout, rear_layout, driven_axle } as SilhouetteSheet;
          expect(silhouetteOfFamily(kept(sheet))).toEqual(sheet);
        }
  });

  it("are none where anything was edited by hand since", () => {
    const family = kept(entered);
    const moved = { ...family, front: { ...family.front, bumpStop: family.front.bumpStop + 0.001 } };
    const lived = {
      ...family,
      life: [{ position: "front/tyre", lowKm: 1, middleKm: 2, highKm: 3, source: "x" }] as Family["life"],
    };
    for (const edited of [moved, lived, { ...family, fromYear: 2011 }, { ...family, cgHeight: 0.5 }])
      expect(silhouetteOfFamily(edited)).toBeNull();
  });

  it("are none for a family that was measured", () => {
    const read = parseFamily(
      JSON.parse(readFileSync(new URL("../../demo/families/ouzel-saloon.json", import.meta.url), "utf8")),
    );
    if ("findings" in read) throw new Error(JSON.stringify(read.findings));
    expect(silhouetteOfFamily(read.family)).toBeNull();
  });
});

describe("a family that is corrected", () => {
  it("keeps its id and its note whatever its name becomes", () => {
    const family = { ...kept(entered), id: "wagtail-van-2", note: "from the yard" };
    const corrected = correctedSilhouette(family, { ...entered, name: "Wagtail bus", wheelbase_mm: 2900 });
    expect(corrected).toMatchObject({
      family: { id: "wagtail-van-2", note: "from the yard", name: "Wagtail bus", wheelbase: 2.9 },
    });
  });

  it("is refused with the findings of its entries", () => {
    expect(correctedSilhouette(kept(entered), { ...entered, wheelbase_mm: 27 })).toHaveProperty("findings");
  });
});

describe("what nobody has entered", () => {
  it("is called assumed in the file and comes back left out", () => {
    const sheet: SilhouetteSheet = { name: "Pipit", rear_layout: "trailing-arm", wheelbase_mm: 2640 };
    const family = kept(sheet);
    expect(family.assumed).toContain("front-track");
    expect(family.assumed).toContain("front-layout");
    expect(family.assumed).not.toContain("wheelbase");
    expect(family.assumed).not.toContain("rear-layout");
    expect(silhouetteOfFamily(family)).toEqual(sheet);
  });

  it("comes back entered where the figure on file is no longer what is assumed", () => {
    const family = kept({ name: "Pipit" });
    expect(silhouetteOfFamily({ ...family, kerbMass: 1451, assumed: ["kerb-mass"] })).toBeNull();
    const heavier = kept({ name: "Pipit", kerb_mass_kg: 1600 });
    expect(silhouetteOfFamily({ ...heavier, assumed: ["kerb-mass"] })).toMatchObject({ kerb_mass_kg: 1600 });
  });

  it("leaves files written before such names existed correctable", () => {
    const { assumed, ...older } = kept(entered);
    expect(assumed).not.toContain("kerb-mass");
    expect(silhouetteOfFamily(older)).toEqual(entered);
  });

  it("is nothing that was entered, where everything was", () => {
    const left = kept(entered).assumed?.filter((figure) => (leftOutFigures as readonly string[]).includes(figure));
    expect(left).toEqual([]);
  });
});
