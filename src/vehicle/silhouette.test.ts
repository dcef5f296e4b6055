import { describe, expect, it } from "vitest";
import { assembleCorner } from "./assemble-corner.ts";
import type { Family } from "./family.ts";
import { familyFromSilhouette, type SilhouetteEntries, silhouetteLayouts } from "./silhouette.ts";
import { axleTemplates } from "./templates/template-of.ts";

function familyOf(entries: SilhouetteEntries): Family {
  const made = familyFromSilhouette(entries);
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  return made.family;
}

const pathsOf = (entries: SilhouetteEntries): string[] => {
  const made = familyFromSilhouette(entries);
  return "findings" in made ? made.findings.map(({ code, path }) => `${code} ${path}`) : [];
};

describe("familyFromSilhouette", () => {
  it("makes a car of nothing but defaults, known by template only, and says so", () => {
    const family = familyOf({});
    expect(family.invented).toBe(false);
    expect(family.note).toMatch(/nobody has measured/);
    for (const axle of [family.front, family.rear]) {
      expect(axle.rung).toBe("scaled");
      for (const { inner, outer, innerJoint } of axle.links) {
        expect([inner.origin, outer.origin]).toEqual(["template", "template"]);
        expect(outer.sd).toEqual([0.02, 0.02, 0.012]);
        expect(innerJoint.rateSdShare).toBe(0.4);
      }
    }
    expect(family.variants).toEqual([]);
    expect(family.life).toEqual([]);
  });

  it("puts the wheels where the entries say, both tyres on the ground", () => {
    const family = familyOf({ wheelbase: 2.65, frontTrack: 1.5, rearTrack: 1.52, tyreSize: "195/65 R15" });
    expect(family.front.wheel.centre[0]).toBe(0);
    expect(family.rear.wheel.centre[0]).toBe(-2.65);
    expect(family.front.wheel.centre[1]).toBe(0.75);
    expect(family.rear.wheel.centre[1]).toBe(0.76);
    const { centre, camber, loadedRadius, freeRadius } = family.rear.wheel;
    expect(centre[2] - loadedRadius * Math.cos(camber)).toBeCloseTo(0, 12);
    expect(freeRadius).toBeCloseTo((15 * 25.4 + 2 * 195 * 0.65) / 2000, 12);
    expect(loadedRadius / freeRadius).toBeCloseTo(0.965, 3);
  });

  it("stretches a template with the wheelbase, the track and the height of the hub", () => {
    const small = familyOf({ wheelbase: 2.4, rearTrack: 1.5 });
    const large = familyOf({ wheelbase: 3, rearTrack: 1.575 });
    const inner = (family: Family) =>
      family.rear.links.find(({ name }) => name === "trailing-link")?.inner.at ?? [0, 0, 0];
    expect((inner(large)[0] + 3) / (inner(small)[0] + 2.4)).toBeCloseTo(3 / 2.4, 3);
    expect(inner(large)[1] / inner(small)[1]).toBeCloseTo(1.575 / 1.5, 3);
    const low = familyOf({ tyreSize: "155/65 R14" });
    const high = familyOf({ tyreSize: "235/55 R19" });
    expect(inner(high)[2] / inner(low)[2]).toBeCloseTo(high.rear.wheel.centre[2] / low.rear.wheel.centre[2], 3);
  });

  it("leaves the axles of a long van and of a very short car as they are at the ends of what a template is stretched to", () => {
    const inner = (wheelbase: number) => {
      const link = familyOf({ wheelbase }).rear.links.find(({ name }) => name === "trailing-link");
      return (link?.inner.at[0] ?? 0) + wheelbase;
    };
    expect(inner(4.325)).toBeCloseTo(inner(3.4), 9);
    expect(inner(1.9)).toBeCloseTo(inner(2.2), 9);
    expect(inner(3.4)).toBeGreaterThan(inner(3.3) + 0.005);
  });

  it("lowers the body with everything held in it, and nothing of the wheel", () => {
    const built = familyOf({ frontLayout: "double-wishbone" });
    const lowered = familyOf({ frontLayout: "double-wishbone", frontLowered: 0.03 });
    built.front.links.forEach((link, index) => {
      const other = lowered.front.links[index];
      expect(other?.outer.at).toEqual(link.outer.at);
      expect((other?.inner.at[2] ?? 0) - link.inner.at[2]).toBeCloseTo(-0.03, 12);
    });
    expect(lowered.front.spring.body.at[2] - built.front.spring.body.at[2]).toBeCloseTo(-0.03, 12);
    expect(lowered.rear).toEqual(built.rear);
  });

  it("takes rates and springs in proportion to the mass it carries", () => {
    const light = familyOf({ kerbMass: 1000 });
    const heavy = familyOf({ kerbMass: 2000 });
    const radial = (family: Family) => family.rear.links[0]?.innerJoint.radial ?? 0;
    expect(radial(heavy) / radial(light)).toBeCloseTo(2, 2);
    expect(heavy.front.spring.rate / light.front.spring.rate).toBeCloseTo(2, 2);
  });

  it.each([
    ["front", [1, 0]],
    ["rear", [0, 1]],
    ["both", [0.56, 0.44]],
  ] as const)("drives %s", (drivenAxle, shares) => {
    const { front, rear } = familyOf({ drivenAxle });
    expect([front.driveShare, rear.driveShare]).toEqual(shares);
    expect([front.driven, rear.driven]).toEqual(shares.map((share) => share > 0));
    expect(front.brakeShare + rear.brakeShare).toBeCloseTo(1, 12);
  });

  it("makes an id of any name", () => {
    expect(familyOf({ name: "Wren estate, 3rd" }).id).toBe("wren-estate-3rd");
    expect(familyOf({ name: "Wrén coupé" }).id).toBe("wren-coupe");
    expect(familyOf({ name: "—" }).id).toBe("car-line");
  });

  it("gives exact mirror halves of the subframe and its mounts", () => {
    const { front } = familyOf({});
    for (const outline of front.subframe) {
      for (const [x, y] of outline) expect(outline).toContainEqual([x, y === 0 ? 0 : -y]);
    }
    expect(front.subframeMounts).toHaveLength(4);
  });

  it("refuses every unreasonable entry at once, each by its name", () => {
    expect(
      pathsOf({
        wheelbase: 27,
        frontTrack: 0.9,
        kerbMass: 15,
        tyreSize: "big",
        frontLowered: 0.2,
        rearLayout: "strut",
      }).sort(),
    ).toEqual([
      "no-template rearLayout",
      "out-of-range frontLowered",
      "out-of-range frontTrack",
      "out-of-range kerbMass",
      "out-of-range wheelbase",
      "tracks-too-different rearTrack",
      "tyre-size-unreadable tyreSize",
    ]);
    expect(pathsOf({ tyreSize: "125/40 R12" })).toEqual(["out-of-range tyreSize"]);
    expect(pathsOf({ wheelbase: Number.NaN })).toEqual(["out-of-range wheelbase"]);
  });
});

describe("the templates", () => {
  it("are five distinct linkages", () => {
    expect(silhouetteLayouts).toEqual({
      front: ["five-link", "double-wishbone", "strut"],
      rear: ["five-link", "trailing-arm"],
    });
    const kinds = axleTemplates.map(({ axle, links, strut, trailingArm }) => {
      const arms = new Set(links.flatMap(({ arm }) => arm ?? [])).size;
      return `${axle}: ${links.length} links, ${arms} arms${strut ? ", strut" : ""}${trailingArm ? ", trailing arm" : ""}`;
    });
    expect(kinds).toEqual([
      "front: 5 links, 0 arms",
      "front: 5 links, 2 arms",
      "front: 3 links, 1 arms, strut",
      "rear: 5 links, 0 arms",
      "rear: 3 links, 0 arms, trailing arm",
    ]);
  });

  it("share no hard point with each other", () => {
    const points = axleTemplates.map(({ links }) => links.flatMap(({ inner, outer }) => [inner.join(), outer.join()]));
    points.forEach((own, index) => {
      for (const others of points.slice(index + 1)) expect(own.filter((point) => others.includes(point))).toEqual([]);
    });
  });

  it("carry the weight on their springs: the static deflection fits the ride frequency", () => {
    const family = familyOf({});
    const { wheelLoad, unsprungMass, spring } = assembleCorner(family, "rear-left");
    const template = axleTemplates.find(({ axle, layout }) => axle === "rear" && layout === "five-link");
    const wheelRate = spring.rate * (template?.springRatio ?? 0) ** 2;
    expect(Math.sqrt(wheelRate / (wheelLoad / 9.80665 - unsprungMass)) / (2 * Math.PI)).toBeCloseTo(1.45, 2);
  });
});
