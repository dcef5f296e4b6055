import { describe, expect, it } from "vitest";
import { formatFamily, parseFamily, parseSilhouette, usualPointSdMm } from "#contract";
import { placeWords, pointWords } from "./coordinate-words.ts";
import { withCoordinate, withSaid } from "./edit-point.ts";
import { ownSaid } from "./hard-points.ts";
import { parseSheetPath, type SheetPath } from "./sheet-path.ts";
import { sheetValueAt } from "./sheet-value.ts";

/** A car line begun with a strut in front: the two legs of its lower arm end in one ball joint. */
const sheetOf = () => {
  const made = parseSilhouette({ name: "Pipit", front_layout: "strut" });
  if ("findings" in made) throw new Error("refused");
  return formatFamily(made.family);
};
const outer = (leg: number): SheetPath => ["front", "links", leg, "outer_mm"];

describe("a ball joint that two legs share", () => {
  it("is known on both legs when it is known on one", () => {
    const known = withSaid(sheetOf(), outer(0), { origin: "level-plane" });
    expect([0, 1].map((leg) => ownSaid(known, outer(leg)).origin)).toEqual(["level-plane", "level-plane"]);
    expect(ownSaid(known, ["front", "links", 0, "inner_mm"]).origin).toBeUndefined();
    const parsed = parseFamily(known);
    if ("findings" in parsed) throw new Error("refused");
    expect(parsed.family.front.links.slice(0, 2).map((link) => link.outer.sd[2])).toEqual([0.001, 0.001]);
  });

  it("is two points once they stand apart", () => {
    const sheet = sheetOf();
    const at = sheetValueAt(sheet, outer(1));
    const apart = {
      ...sheet,
      front: {
        ...sheet.front,
        links: (sheet.front.links ?? []).map((link, i) => (i === 0 ? { ...link, outer_mm: [14, 720, 180] } : link)),
      },
    };
    const known = withSaid(withCoordinate(apart, outer(0), 2, 181), outer(0), { origin: "tape" });
    expect(ownSaid(known, outer(0)).origin).toBe("tape");
    expect(sheetValueAt(known, outer(1))).toEqual(at);
  });
});

describe("the deviation a blank field promises", () => {
  it.each(["template", "level-plane", "tape", "bench", "maker", "guess", undefined])(
    "is the one read: %s",
    (origin) => {
      const sheet = withSaid(sheetOf(), ["front", "links", 0, "inner_mm"], { origin }) as ReturnType<typeof sheetOf>;
      const parsed = parseFamily(sheet);
      if ("findings" in parsed) throw new Error("refused");
      const read = parsed.family.front.links[0]?.inner.sd.map((sd) => Number((1000 * sd).toFixed(6)));
      expect(usualPointSdMm(origin, sheet.front.defaults ?? {})).toEqual(read);
    },
  );

  it("is not made up for words that are no origin", () => {
    expect(usualPointSdMm("hearsay", {})).toBeNull();
    expect(usualPointSdMm(undefined, { sd_mm: [1, 2, 3], origin: "tape" })).toEqual([1, 2, 3]);
    expect(usualPointSdMm("bench", { sd_mm: [1, 2, 3] })).toEqual([0.5, 0.5, 0.5]);
  });
});

describe("places of points in words", () => {
  it.each([
    ["front.links[0].inner_mm[2]", "Front axle: lower arm, front leg, inner end, z"],
    ["front.strut.axis_point_mm", "Front axle: strut, point on its axis"],
    ["kerb_mass_kg", "Kerb mass"],
  ])("%s", (path, words) => expect(placeWords(sheetOf(), parseSheetPath(path) ?? [])).toBe(words));

  it("are those of the fields also where a computation names the point", () => {
    expect(pointWords(sheetOf(), "front", "lower-arm-front.inner")).toBe("lower arm, front leg, inner end");
    expect(pointWords(sheetOf(), "front", "nothing.here")).toBe("nothing, here");
  });
});
