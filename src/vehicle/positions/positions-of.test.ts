import { describe, expect, it } from "vitest";
import type { Axle, Family, LayoutName, Link } from "../family.ts";
import { familyFromSilhouette } from "../silhouette.ts";
import { cornerOf, idWithoutSide, positionsOf, positionsOfAxle } from "./positions-of.ts";

function familyOf(frontLayout: LayoutName, rearLayout: LayoutName): Family {
  const made = familyFromSilhouette({ frontLayout, rearLayout, drivenAxle: "both" });
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  return made.family;
}

/** What of an axle belongs to which line of the table: its linkage and hub, its brakes, its wheels. */
function countsOf(axle: Axle): { readonly axle: number; readonly brakes: number; readonly wheels: number } {
  const brakes = new Set(["disc", "pads", "caliper", "brakes"]);
  const wheels = new Set(["tyre", "wheel", "wheel-bolts", "tyres"]);
  const positions = positionsOfAxle(axle);
  const count = (belongs: (item: string) => boolean): number => positions.filter(({ item }) => belongs(item)).length;
  return {
    axle: count((item) => !brakes.has(item) && !wheels.has(item)),
    brakes: count((item) => brakes.has(item)),
    wheels: count((item) => wheels.has(item)),
  };
}

/** The same arm taken apart into two links of their own, as on axles with two lower links. */
function withoutArms(axle: Axle): Axle {
  const links = axle.links.map(({ arm: _, ...link }): Link => link);
  return { ...axle, links };
}

describe("positions of an axle", () => {
  // Points per layout: from memory (trade practice); sums computed: per side twice, then what belongs to the axle.
  // The table counts the brake hose with the axle and again with the brakes; here it is one position, with the axle.
  it("are as many as the trade's list has for each layout", () => {
    const { front: fiveLink, rear: fiveLinkRear } = familyOf("five-link", "five-link");
    const { front: wishbone, rear: trailing } = familyOf("double-wishbone", "trailing-arm");
    const { front: strut } = familyOf("strut", "five-link");
    const sensed = { ...fiveLinkRear, levelSensor: true };
    expect(countsOf(fiveLink).axle).toBe(2 * 20 + 9);
    expect(countsOf(wishbone).axle).toBe(2 * 18 + 9);
    expect(countsOf(strut).axle).toBe(2 * 14 + 9);
    expect(countsOf(withoutArms(strut)).axle).toBe(2 * 15 + 9);
    expect(countsOf(sensed).axle).toBe(2 * 20 + 9);
    expect(countsOf({ ...sensed, driven: false }).axle).toBe(2 * 19 + 6);
    expect(countsOf({ ...trailing, driven: false }).axle).toBe(2 * 15 + 6);
  });

  it("have nine brake points a corner and three an axle, eight wheel points and one for the match", () => {
    const { front, rear } = familyOf("strut", "trailing-arm");
    const hoses = 2;
    expect(countsOf(rear).brakes + hoses).toBe(2 * 9 + 3);
    expect(countsOf(rear).wheels).toBe(2 * 4 + 1);
    expect(front.brake.parking).toBe(false);
    expect(countsOf(front).brakes + hoses).toBe(2 * 9 + 2);
  });

  it("count up to six subframe mounts, and no bar where there is none", () => {
    const { front } = familyOf("five-link", "five-link");
    const middle = [
      [-0.05, 0.4, 0.3],
      [-0.05, -0.4, 0.3],
    ] as const;
    expect(countsOf({ ...front, subframeMounts: [...front.subframeMounts, ...middle] }).axle).toBe(2 * 20 + 11);
    const { bar: _, ...barless } = front;
    expect(countsOf(barless).axle).toBe(2 * 19 + 7);
  });

  it("have unique ids that begin with their corner, and lie on the side they are named after", () => {
    for (const family of [
      familyOf("five-link", "five-link"),
      familyOf("double-wishbone", "trailing-arm"),
      familyOf("strut", "five-link"),
    ]) {
      const positions = positionsOf(family);
      expect(new Set(positions.map(({ id }) => id)).size).toBe(positions.length);
      for (const position of positions) {
        const corner = cornerOf(position);
        expect(position.id.startsWith(`${corner ?? position.axle}/`)).toBe(true);
        if (corner !== null && position.at) expect(Math.sign(position.at[1])).toBe(position.side === "left" ? 1 : -1);
        if (position.at) expect(position.at.every(Number.isFinite)).toBe(true);
      }
    }
  });

  it("are the same on both sides, mirrored", () => {
    const positions = positionsOf(familyOf("double-wishbone", "trailing-arm"));
    for (const left of positions.filter(({ side }) => side === "left")) {
      const right = positions.find((other) => other.side === "right" && idWithoutSide(other) === idWithoutSide(left));
      expect(right?.label).toBe(left.label);
      expect(right?.at).toEqual(left.at && [left.at[0], -left.at[1], left.at[2]]);
    }
  });

  it("name the joint of the linkage they are: every rubber and ball joint once a side, an arm's outer joint by its first leg", () => {
    const { front, rear } = familyOf("double-wishbone", "trailing-arm");
    const jointsOf = (axle: Axle) =>
      positionsOfAxle(axle).flatMap(({ side, joint, id }) =>
        side === "left" && joint ? [`${joint.link} ${joint.end} ${id.split("/")[2]}`] : [],
      );
    expect(jointsOf(front)).toEqual([
      "upper-arm-front inner front-bush",
      "upper-arm-rear inner rear-bush",
      "upper-arm-front outer ball-joint",
      "lower-arm-front inner front-bush",
      "lower-arm-rear inner rear-bush",
      "lower-arm-front outer ball-joint",
      "tie-rod inner inner-joint",
      "tie-rod outer outer-joint",
    ]);
    expect(jointsOf(rear)).toEqual([
      "trailing-arm inner front-bush",
      "upper-link inner inner-bush",
      "upper-link outer outer-bush",
      "spring-link inner inner-bush",
      "spring-link outer outer-bush",
      "lower-front-link inner inner-bush",
      "lower-front-link outer outer-joint",
    ]);
    expect(jointsOf(familyOf("strut", "five-link").front)).toContain("strut-top inner top-mount");
  });

  it("read in the words of the trade", () => {
    const labels = positionsOf(familyOf("double-wishbone", "five-link")).map(({ label }) => label);
    expect(labels).toContain("Lower arm, rear hydraulic bush");
    expect(labels).toContain("Lower arm, ball joint");
    expect(labels).toContain("Trailing link, front bush");
    expect(labels).toContain("Final drive, left front mount");
  });

  it("are the same places on the rung layout, where only the silhouette is known", () => {
    const entries = { frontLayout: "strut", rearLayout: "trailing-arm" } as const;
    const scaled = familyFromSilhouette(entries);
    const layout = familyFromSilhouette(entries, "layout");
    if ("findings" in scaled || "findings" in layout) throw new Error("the silhouette was refused");
    expect(layout.family.rear.rung).toBe("layout");
    expect(positionsOf(layout.family)).toEqual(positionsOf(scaled.family));
  });
});
