import { describe, expect, it } from "vitest";
import { makeValidInputs } from "../../../test/fuzz/valid-inputs.ts";
import { askDoor } from "../index.ts";

type Doc = Record<string, unknown>;
const travel = makeValidInputs().filter((v) => v.door === "linkage.travel");
const cornerOf = ({ input }: { readonly input: Doc }): Doc => {
  const { links, strut, trailing_arm, wheel } = input;
  return { links, wheel, ...(strut ? { strut } : {}), ...(trailing_arm ? { trailing_arm } : {}) };
};
const five = travel.find((v) => (cornerOf(v).links as Doc[]).length === 5 && v.layout.includes("five_link"));
if (!five) throw new Error("no five-link among the valid inputs");
const corner = cornerOf(five);
const links = corner.links as { readonly name: string; readonly inner_mm: number[]; readonly outer_mm: number[] }[];
const [first] = links;
if (!first) throw new Error("no link");

function outputOf<T>(id: string, input: Doc): T {
  const answer = askDoor(id, input);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output as T;
}

interface Joints {
  readonly positions: readonly {
    readonly joints: readonly { twist_deg?: number; twist_from_tightened_deg?: number }[];
  }[];
}

describe("the calculation of joint angles", () => {
  const bushes = [{ link: first.name, end: "inner", axis: [1, 0, 0] }];
  const shaft = { inner_mm: [0, 100, 330], outer_mm: [0, 650, 310] };
  const steps = [{ wheel_travel_mm: -40 }, { wheel_travel_mm: 0 }, { wheel_travel_mm: 30 }];

  it("winds a bush up at ride height by what it turns from where it was tightened", () => {
    const { positions } = outputOf<Joints>("linkage.joints", { ...corner, bushes, tightened_at_mm: -40, steps });
    const [hanging, ride] = positions.map((p) => p.joints[0]);
    expect(hanging?.twist_from_tightened_deg).toBeCloseTo(0, 12);
    expect(ride?.twist_deg).toBeCloseTo(0, 12);
    expect(ride?.twist_from_tightened_deg).toBeCloseTo(-(hanging?.twist_deg ?? 0), 12);
    expect(Math.abs(ride?.twist_from_tightened_deg ?? 0)).toBeGreaterThan(3);
  });

  it("names what locks where the wheel moves in a plane, and not the tie rod that goes along", () => {
    const leg = (name: string, inner_mm: number[], outer_mm: number[]) => ({ name, inner_mm, outer_mm });
    const planar = {
      links: [
        leg("lower-front", [150, 350, 200], [0, 740, 180]),
        leg("lower-rear", [-150, 350, 200], [0, 740, 180]),
        leg("upper-front", [100, 600, 480], [0, 690, 520]),
        leg("upper-rear", [-100, 600, 480], [0, 690, 520]),
        leg("tie-rod", [-120, 350, 200], [-120, 740, 180]),
      ],
      wheel: { centre_mm: [0, 760, 310], camber_deg: 0, toe_deg: 0, loaded_radius_mm: 300 },
      steps: [{ wheel_travel_mm: 0 }],
    };
    type Ends = { binds: Record<"low" | "high", { at_mm: number; joints: { joint: string; share: number }[] }> };
    const { binds } = outputOf<Ends>("linkage.joints", planar);
    for (const end of [binds.low, binds.high]) {
      const shares = Object.fromEntries(end.joints.map(({ joint, share }) => [joint, share]));
      expect(Object.keys(shares).sort()).toEqual(["lower-front", "lower-rear", "upper-front", "upper-rear"]);
      // Four bars in a plane lock with the short arm in line: both legs of an arm carry the same.
      expect(shares["upper-front"]).toBeCloseTo(1, 9);
      expect(shares["upper-rear"]).toBeCloseTo(1, 9);
      expect(shares["lower-rear"]).toBeCloseTo(shares["lower-front"] ?? 0, 9);
    }
  });

  it("ignores no bush: one given twice, one of a mount that is not there, one at an end a mount has not", () => {
    const strut = travel.find((v) => "strut" in v.input);
    if (!strut) throw new Error("no strut among the valid inputs");
    const asked = (of: Doc, list: readonly (readonly [string, string])[]): string[] => {
      const answer = askDoor("linkage.joints", {
        ...of,
        bushes: list.map(([link, end]) => ({ link, end, axis: [0, 0, 1] })),
        steps,
      });
      return "findings" in answer ? answer.findings.map(({ code, path }) => `${code} ${path}`) : [];
    };
    expect(asked(cornerOf(strut), [["strut_top", "inner"]])).toEqual([]);
    expect(asked(cornerOf(strut), [["strut_top", "outer"]])).toEqual(["not-consistent bushes[0].end"]);
    expect(asked(corner, [["strut_top", "inner"]])).toEqual(["unknown-name bushes[0].link"]);
    const twice = [[first.name, "inner"] as const, [first.name, "outer"] as const, [first.name, "inner"] as const];
    expect(asked(corner, twice)).toEqual(["repeated-name bushes[2]"]);
  });

  it("turns twists round on the right, where everything else stays", () => {
    const flip = ([x, y, z]: readonly number[]): number[] => [x as number, -(y as number), z as number];
    const right = {
      side: "right",
      links: links.map((l) => ({ ...l, inner_mm: flip(l.inner_mm), outer_mm: flip(l.outer_mm) })),
      wheel: { ...(corner.wheel as Doc), centre_mm: flip((corner.wheel as { centre_mm: number[] }).centre_mm) },
    };
    const left = outputOf<Joints>("linkage.joints", { ...corner, bushes, drive_shaft: shaft, steps });
    const other = outputOf<Joints>("linkage.joints", {
      ...right,
      bushes,
      drive_shaft: { inner_mm: flip(shaft.inner_mm), outer_mm: flip(shaft.outer_mm) },
      steps,
    });
    left.positions.forEach((p, i) => {
      const twin = other.positions[i];
      expect(twin?.joints[0]?.twist_deg).toBeCloseTo(-(p.joints[0]?.twist_deg ?? 1), 10);
      expect((twin as unknown as Doc).drive_shaft).toEqual((p as unknown as Doc).drive_shaft);
    });
  });

  it("is refused with a name nobody has, an axis of nought, a shaft of no length, a height out of reach", () => {
    const wrong = askDoor("linkage.joints", {
      ...corner,
      bushes: [{ link: "nobody", end: "inner", axis: [0, 0, 0] }],
      drive_shaft: { inner_mm: [0, 100, 330], outer_mm: [0, 100, 330] },
      steps,
    });
    const paths = "findings" in wrong ? wrong.findings.map((f) => `${f.code} ${f.path}`) : [];
    expect(paths).toEqual(
      expect.arrayContaining([
        "zero-axis bushes[0].axis",
        "unknown-name bushes[0].link",
        "coincident-points drive_shaft.outer_mm",
      ]),
    );
    const far = askDoor("linkage.joints", { ...corner, tightened_at_mm: 1900, steps });
    expect("findings" in far && far.findings[0]).toMatchObject({ code: "beyond-fold", path: "tightened_at_mm" });
  });
});

interface Car {
  readonly states: readonly Record<
    string,
    { camber_deg: number; wheel_travel_mm: number; left_wheel_n: number; error_deg: number; inner_deg: number }
  >[];
}

describe("the calculation of a whole car", () => {
  const steeredInput = travel.find((v) => (cornerOf(v).links as Doc[]).some((l) => l.steered === true));
  if (!steeredInput) throw new Error("no steered corner");
  const car = { front: cornerOf(steeredInput), rear: corner, about_mm: [-1300, 0, 300] };

  it("rolls left and right as mirror images, and its bar holds against it", () => {
    const { states } = outputOf<Car>("linkage.car", {
      ...car,
      rear_bar: { torsion_nm_per_deg: 12, lever_mm: 200, ratio: 0.6 },
      motions: [{ roll_deg: 2 }, { roll_deg: -2 }],
    });
    const [one, other] = states;
    expect(one?.rear_left?.camber_deg).toBeCloseTo(other?.rear_right?.camber_deg ?? 99, 10);
    // Left side up: the left wheel droops, and the bar pulls it up.
    expect(one?.rear_left?.wheel_travel_mm).toBeLessThan(0);
    expect(one?.rear_bar?.left_wheel_n).toBeGreaterThan(0);
    expect(one?.rear_bar?.left_wheel_n).toBeCloseTo(-(other?.rear_bar?.left_wheel_n ?? 0), 8);
  });

  it("holds its steering against one turn centre, the same to both sides", () => {
    const turn = { pivots_mm: 1450, wheelbase_mm: 2700 };
    const { states } = outputOf<Car>("linkage.car", { ...car, turn, motions: [{ rack_mm: 20 }, { rack_mm: -20 }] });
    expect(states[0]?.steering?.inner_deg).toBeGreaterThan(3);
    expect(states[0]?.steering?.error_deg).toBeCloseTo(states[1]?.steering?.error_deg ?? 99, 10);
  });

  it("names the axle whose corner is wrong, and says what it cannot reach", () => {
    const wrong = askDoor("linkage.car", { ...car, rear: { ...corner, links: links.slice(1) }, motions: [{}] });
    expect("findings" in wrong && wrong.findings[0]).toMatchObject({ code: "constraint-too-few", path: "rear.links" });
    const { states } = outputOf<Car>("linkage.car", { ...car, motions: [{ heave_mm: 1500 }] });
    expect(states[0]).toEqual({ refused: { code: "beyond-fold" } });
  });
});
