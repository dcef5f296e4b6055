import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type CornerGeometry, type TravelPosition, TravelSweep } from "#engines/linkage";
import { type AxleName, assembleCorner, type Family, STANDARD_GRAVITY } from "#vehicle";
import { demoSheetText } from "../../../test/family-sheets/edit-sheet.ts";
import { formatFamily, parseFamily, parseFamilyText, parseSilhouette } from "./index.ts";

const DEGREES = 180 / Math.PI;
const travelsMm = [-80, -60, -40, -20, 0, 20, 40, 60, 80];

function geometryOf(family: Family, axle: AxleName): CornerGeometry {
  const { wheel, links, strut, trailingArm } = assembleCorner(family, `${axle}-left`);
  const { body, seat } = family[axle].spring;
  if (seat.on === "body") throw new Error("a sheet with one knuckle was meant");
  return {
    spring: { body: body.at, seat: seat.on === "link" ? seat : { ...seat, moving: seat.moving.at } },
    wheel,
    links: links.map(({ name, inner, outer, steered }) => ({ name, inner: inner.at, outer: outer.at, steered })),
    ...(strut && { strut: { top: strut.top.at, axisPoint: strut.axisPoint.at } }),
    ...(trailingArm && {
      trailingArm: { bush: trailingArm.bush.at, ...(trailingArm.freeAxis && { freeAxis: trailingArm.freeAxis }) },
    }),
  };
}

/** The rigid linkage over its whole travel; throws where it does not close. */
function sweep(family: Family, axle: AxleName): readonly TravelPosition[] {
  const solver = new TravelSweep(geometryOf(family, axle));
  return travelsMm.map((mm) => {
    const answer = solver.solve({ travel: mm / 1000, rack: 0 });
    if ("foldAt" in answer)
      throw new Error(`${family.id} ${axle} ends at ${answer.foldAt * 1000} mm on the way to ${mm} mm`);
    return answer;
  });
}

function familyFrom(parsed: ReturnType<typeof parseFamily>): Family {
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
}

/** Frequency in Hz at which the body rides on this wheel, tyre and bushes taken as rigid. */
function rideFrequency(family: Family, axle: AxleName): number {
  const { wheelLoad, unsprungMass, spring } = assembleCorner(family, `${axle}-left`);
  const ratio = sweep(family, axle)[travelsMm.indexOf(0)]?.springRatio ?? 0;
  return Math.sqrt((spring.rate * ratio ** 2) / (wheelLoad / STANDARD_GRAVITY - unsprungMass)) / (2 * Math.PI);
}

interface Behaviour {
  readonly camberGain: number;
  readonly toeGain: number;
  readonly largestToeChange: number;
  readonly rollCentreMm: number;
}

function behaviourOf(family: Family, axle: AxleName): Behaviour {
  const positions = sweep(family, axle);
  const standing = positions[travelsMm.indexOf(0)];
  if (!standing) throw new Error("no position at ride height");
  const toes = positions.map(({ attitude }) => (attitude.toe - standing.attitude.toe) * DEGREES);
  return {
    camberGain: standing.camberGain * DEGREES,
    toeGain: standing.toeGain * DEGREES,
    largestToeChange: Math.max(...toes.map(Math.abs)),
    rollCentreMm: standing.rollCentreMigrating * 1000,
  };
}

describe("the linkages of the demo families", () => {
  const names = ["siskin-coupe", "dunlin-hatch", "ouzel-saloon"] as const;
  it("are all in this test", () => {
    expect(readdirSync(new URL("../../demo/families/", import.meta.url))).toHaveLength(names.length);
  });

  it.each(
    names.flatMap(
      (name) =>
        [
          [name, "front"],
          [name, "rear"],
        ] as const,
    ),
  )("%s %s closes over 80 mm up and down and steers little", (name, axle) => {
    const behaviour = behaviourOf(familyFrom(parseFamilyText(demoSheetText(name))), axle);
    expect(behaviour.camberGain).toBeLessThan(-10);
    expect(behaviour.camberGain).toBeGreaterThan(-30);
    expect(behaviour.rollCentreMm).toBeGreaterThan(40);
    expect(behaviour.rollCentreMm).toBeLessThan(130);
    expect(behaviour.largestToeChange).toBeLessThan(0.4);
    // In bump the front toes out a little and the rear in: the car stays steady in a bend.
    const expected = axle === "front" ? -1 : 1;
    expect(Math.sign(behaviour.toeGain)).toBe(expected);
    expect(Math.abs(behaviour.toeGain)).toBeLessThan(4);
  });
});

describe("the springs", () => {
  it.each(["siskin-coupe", "dunlin-hatch", "ouzel-saloon"] as const)(
    "of %s carry their load as a road car's do, the rear a little faster",
    (name) => {
      const family = familyFrom(parseFamilyText(demoSheetText(name)));
      const [front, rear] = [rideFrequency(family, "front"), rideFrequency(family, "rear")];
      expect(front).toBeGreaterThan(1.15);
      expect(front).toBeLessThan(1.6);
      expect(rear / front).toBeGreaterThan(1);
      expect(rear / front).toBeLessThan(1.25);
    },
  );

  it.each([
    ["five-link", "five-link"],
    ["double-wishbone", "trailing-arm"],
    ["strut", "five-link"],
  ] as const)("of the templates %s and %s give the frequency they are chosen for", (front_layout, rear_layout) => {
    const family = familyFrom(parseSilhouette({ front_layout, rear_layout }));
    expect(rideFrequency(family, "front") / 1.3).toBeCloseTo(1, 1);
    expect(rideFrequency(family, "rear") / 1.45).toBeCloseTo(1, 1);
  });
});

describe("the linkages of the templates", () => {
  const fronts = ["five-link", "double-wishbone", "strut"] as const;
  const rears = ["five-link", "trailing-arm", "five-link"] as const;
  const measures = [1800, 2700, 3400, 4800].flatMap((wheelbase_mm) =>
    [1250, 1550, 1850].flatMap((track) =>
      ["155/65 R13", "205/55 R16", "275/45 R21"].map((tyre_size) => ({
        wheelbase_mm,
        front_track_mm: track,
        rear_track_mm: track,
        tyre_size,
      })),
    ),
  );

  it.each(fronts.map((front, index) => [front, rears[index]] as const))(
    "%s and %s close over 80 mm up and down at every corner of what may be entered",
    (front_layout, rear_layout) => {
      for (const entries of measures) {
        for (const lowered of [-30, 0, 40]) {
          const sheet = { front_layout, rear_layout, ...entries, front_lowered_mm: lowered, rear_lowered_mm: lowered };
          const family = familyFrom(parseSilhouette(sheet));
          for (const axle of ["front", "rear"] as const) {
            for (const { closure, report } of sweep(family, axle)) {
              expect(report.end).toBe("converged");
              expect(closure).toBeLessThan(1e-9);
            }
          }
        }
      }
    },
  );

  it.each(fronts.map((front, index) => [front, rears[index]] as const))(
    "%s and %s gain camber and steer little on any car that stands as built",
    (front_layout, rear_layout) => {
      for (const entries of measures) {
        const family = familyFrom(parseSilhouette({ front_layout, rear_layout, ...entries }));
        for (const axle of ["front", "rear"] as const) {
          const { camberGain, largestToeChange, rollCentreMm } = behaviourOf(family, axle);
          expect(camberGain).toBeLessThan(-8);
          expect(camberGain).toBeGreaterThan(-26);
          expect(largestToeChange).toBeLessThan(1);
          expect(rollCentreMm).toBeGreaterThan(40);
          expect(rollCentreMm).toBeLessThan(130);
        }
      }
    },
  );

  it.each(fronts.map((front, index) => [front, rears[index]] as const))(
    "%s and %s are written as family sheets without a finding and read back to the double",
    (front_layout, rear_layout) => {
      for (const entries of measures) {
        const family = familyFrom(parseSilhouette({ front_layout, rear_layout, ...entries, front_lowered_mm: 12.5 }));
        expect(parseFamily(JSON.parse(JSON.stringify(formatFamily(family))))).toEqual({ family });
      }
    },
  );
});
