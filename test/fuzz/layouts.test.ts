import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { askDoor, type LayoutSheet, readLayout } from "#contract";
import { computeWheelGradients, LayoutSweep, TravelBand, TravelSweep, type WheelGradient } from "#engines/linkage";
import { type BodyLayout, countFreedoms } from "#vehicle";
import { followArm } from "../reference/layouts/arm-continuation.ts";
import { layoutOfCorner } from "../reference/layouts/layout-of-corner.ts";
import { readExampleLayout } from "../reference/layouts/layout-rows.ts";
import { compareDerivatives, differentiateAll, makeRandom } from "./differences.ts";
import { readCorners } from "./reference-corners.ts";
import { differenceOf } from "./wire-corner.ts";

type Point = readonly [number, number, number];
const example = readExampleLayout();
const runs = { seed: 20_261_128, numRuns: 25 };
const seeds = fc.integer({ min: 1, max: 1_000_000 });

/** The example with every point moved by up to 12 mm; wheel untouched. */
function disturbed(seed: number): LayoutSheet {
  const random = makeRandom(seed);
  const shift = (): number => 12 * (2 * random() - 1);
  return {
    ...example,
    points: example.points.map(({ name, at_mm: [x, y, z] }) => ({
      name,
      at_mm: [x + shift(), y + shift(), z + shift()] as [number, number, number],
    })),
  };
}

function mapped(sheet: LayoutSheet, map: (p: Point) => Point): LayoutSheet {
  const point = (p: Point): [number, number, number] => [...map(p)];
  return {
    ...sheet,
    points: sheet.points.map((p) => ({ ...p, at_mm: point(p.at_mm) })),
    wheel: { ...sheet.wheel, centre_mm: point(sheet.wheel.centre_mm) },
  };
}

type Answer = Readonly<Record<string, unknown>>;

function positionsOf(layout: LayoutSheet, side: "left" | "right" = "left", gradients = false): readonly Answer[] {
  const steps = [-55, -20, 0, 30, 60].map((wheel_travel_mm) => ({ wheel_travel_mm }));
  const answer = askDoor("linkage.bodies", { side, layout, steps, gradients });
  if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
  return (answer.output as { readonly positions: readonly Answer[] }).positions;
}

const free = ["camber_deg", "spin_deg", "camber_gain_deg_per_m", "toe_gain_deg_per_m", "spring_ratio", "damper_ratio"];
const angles = [...free, "toe_deg", "roll_centre_height_mm", "roll_centre_height_construction_mm"];

describe("a layout of two moving bodies that no code knows", () => {
  it("gives the mirrored answer on the right, derivatives included", () => {
    const flip = ([x, y, z]: Point): Point => [x, y === 0 ? 0 : -y, z];
    fc.assert(
      fc.property(seeds, (seed) => {
        const sheet = disturbed(seed);
        const left = positionsOf(sheet, "left", true);
        positionsOf(mapped(sheet, flip), "right", true).forEach((p, i) => {
          for (const key of angles) expect(differenceOf(p[key], left[i]?.[key]), key).toBeLessThan(1e-11);
          expect(differenceOf(flip(p.contact_mm as Point), left[i]?.contact_mm)).toBeLessThan(1e-11);
          const [mine, theirs] = [p.gradients, left[i]?.gradients] as [Answer[], Answer[]];
          mine.forEach((g, j) => {
            const sign = /\.y$|^rack$/.test(g.by as string) ? -1 : 1;
            expect(differenceOf(sign * (g.toe_deg_per_mm as number), theirs[j]?.toe_deg_per_mm)).toBeLessThan(1e-11);
            const place = (g.contact_mm_per_mm as Point).map((x) => sign * x) as unknown as Point;
            expect(differenceOf(flip(place), theirs[j]?.contact_mm_per_mm)).toBeLessThan(1e-11);
          });
        });
      }),
      runs,
    );
  });

  it("moves and turns with the car", () => {
    const angle = 0.2;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const move = ([x, y, z]: Point): Point => [c * x - s * y + 4000, s * x + c * y + 2500, z];
    fc.assert(
      fc.property(seeds, (seed) => {
        const sheet = disturbed(seed);
        const here = positionsOf(sheet);
        const turned = mapped(sheet, move);
        const toe_deg = sheet.wheel.toe_deg - (angle * 180) / Math.PI;
        positionsOf({ ...turned, wheel: { ...turned.wheel, toe_deg } }).forEach((p, i) => {
          for (const key of free) expect(differenceOf(p[key], here[i]?.[key]), key).toBeLessThan(1e-9);
          expect(differenceOf(p.contact_mm, move(here[i]?.contact_mm as Point))).toBeLessThan(1e-11);
        });
      }),
      runs,
    );
  });

  it("keeps its angles when everything grows", () => {
    const SCALE = 2.6;
    const grown = (layout: BodyLayout): BodyLayout => {
      const grow = (p: Point): Point => [SCALE * p[0], SCALE * p[1], SCALE * p[2]];
      const { wheel } = layout;
      return {
        ...layout,
        points: Object.fromEntries(Object.entries(layout.points).map(([name, p]) => [name, grow(p)])),
        wheel: { ...wheel, centre: grow(wheel.centre), loadedRadius: SCALE * wheel.loadedRadius },
      };
    };
    fc.assert(
      fc.property(seeds, (seed) => {
        const layout = readLayout(disturbed(seed), "left");
        for (const travel of [-0.05, 0.06]) {
          const p = new LayoutSweep(layout).solve({ travel, rack: 0 });
          const q = new LayoutSweep(grown(layout)).solve({ travel: SCALE * travel, rack: 0 });
          if ("foldAt" in p || "foldAt" in q) throw new Error("folds");
          expect(q.attitude.toe).toBeCloseTo(p.attitude.toe, 13);
          expect(q.attitude.camber).toBeCloseTo(p.attitude.camber, 13);
          expect(q.toeGain * SCALE).toBeCloseTo(p.toeGain, 10);
        }
      }),
      runs,
    );
  });

  it("closes where a second continuation closes, from any points", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const sheet = disturbed(seed);
        const got = positionsOf(sheet);
        followArm(sheet, [-55, -20, 0, 30, 60]).forEach(({ centre, axis }, i) => {
          expect(differenceOf(got[i]?.wheel_centre_mm, centre)).toBeLessThan(1e-12);
          expect(Math.abs((got[i]?.camber_deg as number) - (Math.asin(-axis[2]) * 180) / Math.PI)).toBeLessThan(1e-9);
          expect(got[i]?.closure_mm as number).toBeLessThan(1e-9);
        });
      }),
      runs,
    );
  });

  it("has one freedom: 12 of two bodies less 11 held", () => {
    const layout = readLayout(example, "left");
    expect(countFreedoms(layout)).toBe(1);
    expect(new LayoutSweep(layout).linkage.mechanism.constraints.length).toBe(11);
    expect(countFreedoms({ ...layout, links: layout.links.slice(1) })).toBe(2);
  });
});

/** All angles and places of a gradient, or of a position, as one list. */
const valuesOf = (g: Pick<WheelGradient, "camber" | "toe" | "spin" | "centre" | "contact">): number[] => [
  g.camber,
  g.toe,
  g.spin,
  ...g.centre,
  ...g.contact,
];

describe("exact derivatives of a layout", () => {
  const layout = readLayout(example, "left");
  const TRAVEL = 0.037;

  const at = (of: BodyLayout, travel: number): number[] => {
    const p = new LayoutSweep(of).solve({ travel, rack: 0 });
    if ("foldAt" in p) throw new Error("folds");
    return valuesOf(p.attitude);
  };
  const sweep = new LayoutSweep(layout);
  const p = sweep.solve({ travel: TRAVEL, rack: 0 });
  const gradients = "pose" in p ? (sweep.gradientsAt(p.pose, 0) ?? []) : [];
  const by = (wanted: (g: WheelGradient) => boolean): number[] => valuesOf(gradients.find(wanted) as WheelGradient);

  it("agree with extrapolated differences by travel and by every coordinate, and are not made of them", () => {
    const all: number[] = by((g) => g.by.kind === "travel");
    const differences: number[] = [...differentiateAll((travel) => at(layout, travel), TRAVEL, 4e-3)];
    const used = gradients.flatMap((g) => (g.by.kind === "coordinate" ? [g.by] : []));
    // The four ends of spring and damper hold nothing.
    expect(used.length).toBe(3 * (example.points.length - 4));
    for (const one of used) {
      all.push(...by((g) => g.by === one));
      const moved = (shift: number): BodyLayout => {
        const before = layout.points[one.point] as Point;
        const after = before.map((c, i) => (i === one.axis ? c + shift : c)) as unknown as Point;
        return { ...layout, points: { ...layout.points, [one.point]: after } };
      };
      differences.push(...differentiateAll((shift) => at(moved(shift), TRAVEL), 0, 4e-3));
    }
    const compared = compareDerivatives(all, differences);
    expect(compared.worst).toBeLessThan(1e-8);
    expect(compared.identical).toBeLessThan(compared.entries / 4);
  });

  it.each(example.links.map((l) => l.name))("by the length of %s agree with differences of another program", (name) => {
    const exact = by((g) => g.by.kind === "length" && g.by.link === name);
    const differences = differentiateAll(
      (longer) => {
        const [pose] = followArm(example, [TRAVEL * 1000], { [name]: longer * 1000 });
        if (!pose) throw new Error("nothing followed");
        return [Math.asin(-pose.axis[2]), Math.atan2(pose.axis[0], pose.axis[1]), ...pose.centre.map((x) => x / 1000)];
      },
      0,
      4e-3,
    );
    const mine = [exact[0], exact[1], ...exact.slice(3, 6)] as number[];
    expect(compareDerivatives(mine, differences).worst).toBeLessThan(1e-8);
    expect(Math.max(...mine.map(Math.abs))).toBeGreaterThan(0.1);
  });
});

describe.each(readCorners())("derivatives of $name", ({ geometry }) => {
  it("by every coordinate are those of the jets, by travel and rack those of the position", () => {
    const sweep = new TravelSweep(geometry);
    const band = new TravelBand(geometry, (names) => names.map(() => [1, 1, 1]));
    for (const travel of [-0.04, 0.03]) {
      const p = sweep.solve({ travel, rack: 0 });
      const other = band.solve(travel);
      if ("foldAt" in p || "foldAt" in other) throw new Error("folds");
      const gradients = computeWheelGradients(sweep.solver, p.pose, 0, "centre-height") ?? [];
      expect(gradients[0]?.camber).toBeCloseTo(p.camberGain, 12);
      expect(gradients[0]?.toe).toBeCloseTo(p.toeGain, 12);
      const rack = p.steering?.heightHeld;
      if (rack && geometry.links.some((l) => l.steered)) expect(gradients[1]?.toe).toBeCloseTo(rack.toePerRack, 12);
      const coordinates = gradients.filter((g) => g.by.kind === "coordinate");
      coordinates.forEach((g, i) => {
        expect(g.camber).toBeCloseTo(other.camberChange.jet[i + 1] as number, 11);
        expect(g.toe).toBeCloseTo(other.toeChange.jet[i + 1] as number, 11);
      });
      expect(3 * coordinates.length).toBeGreaterThan(30);
    }
  });

  it("are the same with the arms as bodies", () => {
    const pairs = new TravelSweep(geometry);
    const bodies = new LayoutSweep(layoutOfCorner(geometry));
    const [p, q] = [pairs.solve({ travel: 0.03, rack: 0 }), bodies.solve({ travel: 0.03, rack: 0 })];
    if ("foldAt" in p || "foldAt" in q) throw new Error("folds");
    const mine = computeWheelGradients(pairs.solver, p.pose, 0, "centre-height") ?? [];
    const theirs = bodies.gradientsAt(q.pose, 0) ?? [];
    const coordinates = (list: readonly WheelGradient[]) => list.filter((g) => g.by.kind === "coordinate");
    const place = (sweep: TravelSweep | LayoutSweep, name: string): string =>
      sweep.linkage.mechanism.points[sweep.linkage.mechanism.pointNames.indexOf(name)]?.join() ?? "";
    let compared = 0;
    for (const g of coordinates(mine)) {
      if (g.by.kind !== "coordinate") continue;
      const { point, axis } = g.by;
      const here = place(pairs, point);
      const twin = coordinates(theirs).find(
        ({ by }) => by.kind === "coordinate" && by.axis === axis && place(bodies, by.point) === here,
      );
      expect(twin?.toe).toBeCloseTo(g.toe, 10);
      expect(twin?.camber).toBeCloseTo(g.camber, 10);
      compared++;
    }
    expect(compared).toBeGreaterThan(9);
  });
});
