import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { askDoor } from "#contract";
import { makeValidInputs } from "./valid-inputs.ts";
import { differenceOf, disturbRequest, mapRequest, type WireMap } from "./wire-corner.ts";

const valid = makeValidInputs().filter((v) => v.door.startsWith("linkage."));
const runs = { seed: 20_240_917, numRuns: 40 };
const cases = fc.tuple(fc.constantFrom(...valid), fc.integer({ min: 1, max: 1_000_000 }));

type Json = Record<string, unknown>;

/**
 * The output, or the codes of its findings; both sides of a comparison must then be refused alike. How a match ended is
 * compared, not what is left of its slope: that is rounding and no figure.
 */
function ask(door: string, input: unknown): unknown {
  const answer = askDoor(door, input);
  if (!("output" in answer)) return answer.findings.map((f) => f.code);
  if (door !== "linkage.match") return answer.output;
  const output = answer.output as Json & { readonly report: Json };
  return { ...output, report: output.report.end };
}

const same = {
  point: (p: readonly [number, number, number]) => p,
  direction: (p: readonly [number, number, number]) => p,
};
const flipY = ([x, y, z]: readonly [number, number, number]) => [x, -y, z] as const;

const negated = (x: number): number => -x;
const isCar = (door: string): boolean => door.startsWith("linkage.car");

/** Request of the mirrored right corner; of a whole car, which has its left corners on file, the mirrored motion. */
const mirrored = (door: string, input: unknown): unknown => {
  if (isCar(door)) {
    const turned: WireMap = { ...same, figures: { rack_mm: negated, roll_deg: negated, lateral_m_per_s2: negated } };
    const { about_mm, ...car } = input as Json;
    const about = about_mm ? { about_mm: flipY(about_mm as [number, number, number]) } : {};
    return { ...(mapRequest(car, turned) as Json), ...about };
  }
  const turned: WireMap = {
    point: flipY,
    direction: flipY,
    figures: { rack_mm: negated, lateral_n: negated, aligning_nm: negated, clocking_deg: negated },
  };
  return { ...(mapRequest(input, turned) as Json), side: "right" };
};

/** Left and right of a whole car exchanged: what turned to the left turns to the right. */
function exchangeSides({ states }: Json): Json {
  const other = (key: string): string => key.replace(/left|right/, (side) => (side === "left" ? "right" : "left"));
  const against = (figures: Json, keys: RegExp): Json =>
    Object.fromEntries(Object.entries(figures).map(([k, v]) => [k, keys.test(k) ? -(v as number) : v]));
  const wheel = (w: Json): Json => ({
    ...against(w, /^lateral_n$/),
    ...(w.contact_mm ? { contact_mm: flipY(w.contact_mm as [number, number, number]) } : {}),
  });
  const turns = ({ left_deg, right_deg, ...rest }: Json): Json => ({
    ...rest,
    left_deg: -(right_deg as number),
    right_deg: -(left_deg as number),
  });
  const part = (k: string, v: unknown): readonly [string, unknown] => {
    if (/^(front|rear)_(left|right)$/.test(k)) return [other(k), wheel(v as Json)];
    if (k.endsWith("bar")) return [k, against(v as Json, /./)];
    return [k, k === "steering" ? turns(v as Json) : v];
  };
  const state = (s: Json): Json =>
    against(Object.fromEntries(Object.entries(s).map(([k, v]) => part(k, v))), /^(roll_deg|(front|rear)_moved_n)$/);
  return { states: (states as Json[]).map(state) };
}

/** Answer of a right corner, mirrored back. */
function mirrorAnswer(value: unknown, key = "", sign = 1): unknown {
  if (Array.isArray(value)) {
    if (key === "front_view_centre_mm") return [-(value[0] as number), value[1]];
    const isPlace =
      /^((wheel_centre|contact)(_change)?|shift)_mm$/.test(key) ||
      key === "force_n" ||
      key === "strut_top" ||
      key === "trailing_arm";
    if (isPlace) return [sign * (value[0] as number), -sign * (value[1] as number), sign * (value[2] as number)];
    return value.map((one) => mirrorAnswer(one, key, sign));
  }
  if (typeof value === "number") return key === "fold_rack_mm" ? -value : sign * value;
  if (typeof value !== "object" || value === null) return value;
  // A turn about a mirrored axis is the other way round.
  const against = (k: string): number =>
    k === "lateral" || k === "aligning_per_100_nm" || k.startsWith("twist_") ? -1 : sign;
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, mirrorAnswer(v, k, against(k))]));
}

describe("a mirrored corner on the right", () => {
  it("gives the mirrored answer, at every door of the linkage", () => {
    fc.assert(
      fc.property(cases, ([{ door, input }, seed]) => {
        const left = disturbRequest(input, seed, 15);
        const right = ask(door, mirrored(door, left));
        const back = isCar(door) && !Array.isArray(right) ? exchangeSides(right as Json) : mirrorAnswer(right);
        expect(differenceOf(back, ask(door, left)), door).toBeLessThan(1e-11);
      }),
      runs,
    );
  });
});

describe("a corner further forward", () => {
  const forward: WireMap = { ...same, point: ([x, y, z]) => [x + 1234.5, y, z], figures: {} };
  const back = (value: unknown, key = ""): unknown => {
    if (Array.isArray(value)) {
      if (/^(wheel_centre_mm|contact_mm|side_view_centre_mm)$/.test(key) && value.every((x) => typeof x === "number"))
        return [(value[0] as number) - 1234.5, ...value.slice(1)];
      return value.map((one) => back(one, key));
    }
    if (typeof value !== "object" || value === null) return value;
    // Rates of places per load do not move with the car.
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, k === "per_kn" ? v : back(v, k)]));
  };

  it("gives the same answer, only further forward", () => {
    fc.assert(
      fc.property(cases, ([{ door, input }, seed]) => {
        const here = disturbRequest(input, seed, 15);
        expect(differenceOf(back(ask(door, mapRequest(here, forward))), ask(door, here)), door).toBeLessThan(1e-9);
      }),
      runs,
    );
  });
});

describe("a corner turned about the vertical", () => {
  const ANGLE = 0.13;
  const [c, s] = [Math.cos(ANGLE), Math.sin(ANGLE)];
  const turn = ([x, y, z]: readonly [number, number, number]) => [c * x - s * y, s * x + c * y, z] as const;
  const yawed: WireMap = { point: turn, direction: turn, figures: { toe_deg: (x) => x - (ANGLE * 180) / Math.PI } };
  /** Figures that do not hang on where forward is. */
  const free = [
    "camber_deg",
    "spin_deg",
    "camber_gain_deg_per_m",
    "toe_gain_deg_per_m",
    "trail_mm",
    "scrub_mm",
    "spring_ratio",
    "damper_ratio",
  ];

  it("gives the same figures where they do not depend on the axes", () => {
    const travel = fc.tuple(
      fc.constantFrom(...valid.filter((v) => v.door === "linkage.travel")),
      fc.integer({ min: 1, max: 1_000_000 }),
    );
    fc.assert(
      fc.property(travel, ([{ door, input }, seed]) => {
        const here = {
          ...(disturbRequest(input, seed, 15) as Json),
          steps: [{ wheel_travel_mm: -40 }, { wheel_travel_mm: 35 }],
        };
        const there = mapRequest(here, yawed);
        const [a, b] = [ask(door, here), ask(door, there)] as { positions?: Json[] }[];
        expect(b?.positions?.length).toBe(a?.positions?.length);
        a?.positions?.forEach((p, i) => {
          const q = b?.positions?.[i] ?? {};
          for (const key of free) expect(differenceOf(p[key], q[key]), key).toBeLessThan(1e-9);
          expect(differenceOf((p.toe_deg as number) - (ANGLE * 180) / Math.PI, q.toe_deg)).toBeLessThan(1e-9);
          expect(differenceOf(turn(p.contact_mm as unknown as [number, number, number]), q.contact_mm)).toBeLessThan(
            1e-9,
          );
        });
      }),
      runs,
    );
  });

  it("balances the same under loads turned with it", () => {
    const elastic = fc.tuple(
      fc.constantFrom(...valid.filter((v) => v.door === "linkage.compliance")),
      fc.integer({ min: 1, max: 1_000_000 }),
    );
    fc.assert(
      fc.property(elastic, ([{ door, input }, seed]) => {
        const load = { lateral_n: 700, braking_n: 1100, aligning_nm: 30, contact_rise_mm: 8 };
        const here = { ...(disturbRequest(input, seed, 15) as Json), loads: [load] };
        const force = turn([-load.braking_n, load.lateral_n, 0]);
        const there = {
          ...(mapRequest(here, yawed) as Json),
          loads: [{ ...load, braking_n: -force[0], lateral_n: force[1] }],
        };
        const [a, b] = [ask(door, here), ask(door, there)] as { states?: Json[] }[];
        const [p, q] = [a?.states?.[0] ?? {}, b?.states?.[0] ?? {}];
        for (const key of ["camber_deg", "spin_deg", "spring_force_n", "wheel_load_n", "link_force_n", "stable"])
          expect(differenceOf(p[key], q[key]), key).toBeLessThan(1e-8);
        expect(
          differenceOf(turn(p.contact_change_mm as unknown as [number, number, number]), q.contact_change_mm),
        ).toBeLessThan(1e-8);
      }),
      runs,
    );
  });
});

describe("a car of another size under the same forces", () => {
  const SIZE = 1.25;
  /** What becomes of a figure by its unit, which stands in its key: lengths grow, forces and angles stay. */
  const growthOf = (key: string): number =>
    key.endsWith("n_per_mm") || key.endsWith("deg_per_m")
      ? 1 / SIZE
      : key.endsWith("_mm") || key.endsWith("_nm") || key.endsWith("nm_per_deg") || key.startsWith("sd_mm.")
        ? SIZE
        : 1;
  /** Rates per load mix both; how far from ride height an end is looked for is a length that does not grow. */
  const leftOut = ["per_kn", "binds_at_mm", "binds"];
  /** Every figure grown, or shrunk back with -1 as power. */
  const grown = (value: unknown, power: 1 | -1, key = ""): unknown => {
    if (Array.isArray(value)) return value.map((one) => grown(one, power, key));
    if (typeof value === "number") return value * growthOf(key) ** power;
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).flatMap(([k, v]) =>
        leftOut.includes(k) ? [] : [[k, grown(v, power, key === "sd_mm" ? `sd_mm.${k}` : k)]],
      ),
    );
  };

  it("keeps its angles and forces, and its lengths grow with it", () => {
    const sized = ["travel", "joints", "compliance", "load-states", "car", "car-balance", "bodies-compliance"];
    const some = fc.tuple(
      fc.constantFrom(...valid.filter((v) => sized.includes(v.door.replace("linkage.", "")))),
      fc.integer({ min: 1, max: 1_000_000 }),
    );
    fc.assert(
      fc.property(some, ([{ door, input }, seed]) => {
        const here = disturbRequest(input, seed, 15);
        const answer = grown(grown(ask(door, here), 1), -1);
        expect(differenceOf(grown(ask(door, grown(here, 1)), -1), answer), door).toBeLessThan(1e-9);
      }),
      { ...runs, numRuns: 40 },
    );
  });
});
