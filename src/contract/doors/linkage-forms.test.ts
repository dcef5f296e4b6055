import { describe, expect, it } from "vitest";
import { makeValidInputs } from "../../../test/fuzz/valid-inputs.ts";
import { differenceOf } from "../../../test/fuzz/wire-corner.ts";
import { askDoor, describeDoor, findDoor } from "../registry.ts";

/** A request as a test writes it in another form. */
// biome-ignore lint/suspicious/noExplicitAny: the tests rewrite requests key by key
type Request = any;

const valid = makeValidInputs();

function request(door: string, layout: string): Request {
  const found = valid.find((v) => v.door === door && v.layout === layout);
  if (!found) throw new Error(`no valid request of ${door} for ${layout}`);
  return structuredClone(found.input);
}

function ask(door: string, input: unknown): Request {
  const answer = askDoor(door, input);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output;
}

describe("forms that mean the same", () => {
  const corner = request("linkage.travel", "front_double_wishbone");
  const output = ask("linkage.travel", corner);

  it("axle on top, in the car, or in both", () => {
    const { axle, ...car } = corner.car;
    expect(ask("linkage.travel", { ...corner, axle, car })).toEqual(output);
    expect(ask("linkage.travel", { ...corner, axle })).toEqual(output);
  });

  it("side left, or none", () => {
    const { side: _side, ...rest } = corner;
    expect(ask("linkage.travel", rest)).toEqual(output);
  });

  it("no rack in a step, or a rack of 0", () => {
    const steps = corner.steps.map((s: Request) => ({ ...s, rack_mm: s.rack_mm ?? 0 }));
    expect(ask("linkage.travel", { ...corner, steps })).toEqual(output);
  });

  it("a free axis of null, or none", () => {
    const arm = request("linkage.travel", "rear_trailing_arm_spherical");
    const { free_axis: _none, ...bare } = arm.trailing_arm;
    const free = { ...arm, trailing_arm: { ...arm.trailing_arm, free_axis: null } };
    expect(ask("linkage.travel", { ...arm, trailing_arm: bare })).toEqual(ask("linkage.travel", free));
  });

  it("a free axis of any length, either way round", () => {
    const arm = request("linkage.travel", "rear_trailing_arm_three_open");
    const long = {
      ...arm,
      trailing_arm: { ...arm.trailing_arm, free_axis: arm.trailing_arm.free_axis.map((c: number) => -7 * c) },
    };
    expect(differenceOf(ask("linkage.travel", long), ask("linkage.travel", arm))).toBeLessThan(1e-12);
  });

  it("a spring on one link by its share, or by a point beside the link that is dropped onto it", () => {
    const rear = request("linkage.compliance", "rear_trailing_arm_spherical");
    const link = rear.links.find((l: Request) => l.name === rear.spring.on);
    const { fraction, ...rest } = rear.spring;
    const line = link.outer_mm.map((c: number, i: number) => c - link.inner_mm[i]);
    const across = [-line[1], line[0], 0];
    const point = link.inner_mm.map((c: number, i: number) => c + fraction * line[i] + 0.1 * (across[i] as number));
    const spring = { ...rest, moving_mm: point };
    expect(differenceOf(ask("linkage.compliance", { ...rear, spring }), ask("linkage.compliance", rear))).toBeLessThan(
      1e-10,
    );
  });

  it("no loads: no states, and the rates all the same", () => {
    const full = request("linkage.compliance", "front_strut_open");
    const { loads: _loads, ...rest } = full;
    const without = ask("linkage.compliance", rest);
    expect(without.states).toEqual([]);
    expect(without.per_kn).toEqual(ask("linkage.compliance", full).per_kn);
  });

  it("a load left out of a load, or 0", () => {
    const full = { ...request("linkage.compliance", "front_strut_open"), loads: [{ braking_n: 700 }] };
    const zeros = [{ braking_n: 700, lateral_n: 0, drive_n: 0, aligning_nm: 0, contact_rise_mm: 0 }];
    expect(ask("linkage.compliance", { ...full, loads: zeros })).toEqual(ask("linkage.compliance", full));
  });

  it("one fault of a quarter, or two of a half on the same end", () => {
    const full = request("linkage.compliance", "front_five_link_open");
    const soft = (factor: number) => ({ kind: "soft", link: "lower_diagonal", end: "inner", factor });
    const [once, twice] = [[soft(0.25)], [soft(0.5), soft(0.5)]].map((faults) =>
      ask("linkage.compliance", { ...full, faults }),
    );
    expect(differenceOf(once, twice)).toBeLessThan(1e-10);
  });

  it("a fault of a factor 1, or none; an end not named, or the inner one", () => {
    const full = request("linkage.compliance", "front_five_link_open");
    const soft = { kind: "soft", link: "upper_front", factor: 1, end: "inner" };
    expect(ask("linkage.compliance", { ...full, faults: [soft] })).toEqual(
      ask("linkage.compliance", { ...full, faults: [] }),
    );
    const { end: _end, ...unnamed } = { ...soft, factor: 0.4 };
    expect(ask("linkage.compliance", { ...full, faults: [unnamed] })).toEqual(
      ask("linkage.compliance", { ...full, faults: [{ ...unnamed, end: "inner" }] }),
    );
  });
});

describe("steering figures", () => {
  const corner = request("linkage.travel", "front_double_wishbone");

  it("say what was held", () => {
    const { spring: _spring, ...bare } = corner;
    expect(ask("linkage.travel", corner).positions[0].steering_axis_held).toBe("spring_length");
    expect(ask("linkage.travel", bare).positions[0].steering_axis_held).toBe("wheel_centre_height");
  });

  it("are left out where nothing is steered, as is what was not asked for", () => {
    const links = corner.links.map(({ steered: _steered, ...l }: Request) => l);
    const { spring: _spring, damper: _damper, car: _car, ...bare } = corner;
    const [position] = ask("linkage.travel", { ...bare, links, steps: [{ wheel_travel_mm: 5 }] }).positions;
    const absent = [
      "caster_deg",
      "inclination_deg",
      "trail_mm",
      "scrub_mm",
      "steering_axis_held",
      "spring_ratio",
      "damper_ratio",
      "anti_dive_percent",
      "anti_squat_percent",
    ];
    for (const key of absent) expect(position, key).not.toHaveProperty(key);
  });
});

describe("rates with a tolerance", () => {
  const full = request("linkage.band", "front_five_link_open");
  const withShare = (share: number | undefined) => {
    const rubber = full.compliance.rubber.map((r: Request) => ({
      ...r,
      ...(share === undefined ? {} : { rate_sd_share: share }),
    }));
    return ask("linkage.band", { ...full, compliance: { ...full.compliance, rubber } }).difference;
  };

  it("widen the band under load and leave the values alone", () => {
    const [none, nought, some, more] = [withShare(undefined), withShare(0), withShare(0.2), withShare(0.4)];
    expect(nought).toEqual(none);
    expect(some.difference_deg_per_kn).toBe(none.difference_deg_per_kn);
    expect(some.difference_sd_deg_per_kn).toBeGreaterThan(none.difference_sd_deg_per_kn);
    const added = (d: Request): number => d.torn_sd_deg_per_kn ** 2 - none.torn_sd_deg_per_kn ** 2;
    expect(added(more)).toBeCloseTo(4 * added(some), 10);
  });

  it("and no fault make no difference", () => {
    const { fault: _fault, ...sound } = full.compliance;
    expect(ask("linkage.band", { ...full, compliance: sound }).difference).toMatchObject({
      difference_deg_per_kn: 0,
      difference_sd_deg_per_kn: 0,
      difference_sd_share: null,
    });
  });
});

describe("the doors", () => {
  it.each(["linkage.travel", "linkage.compliance", "linkage.band", "alignment.caster-from-sweep", "alignment.axle"])(
    "%s says what it does, by what relation, from where and how well",
    (id) => {
      const door = findDoor(id);
      if (!door) throw new Error("not there");
      const said = describeDoor(door);
      for (const key of ["summary", "relation", "source", "accuracy"] as const)
        expect(said[key].length).toBeGreaterThan(8);
      expect(said.input).toMatchObject({ type: "object", additionalProperties: false });
      expect(said.output).toMatchObject({ type: "object", additionalProperties: false });
    },
  );
});
