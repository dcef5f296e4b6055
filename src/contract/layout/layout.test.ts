import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { askDoor, layoutJsonSchema } from "../index.ts";

type Doc = Record<string, unknown>;
const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8"));
const example = read("../../../docs/examples/layouts/rear-integral-link.json") as {
  readonly points: readonly { readonly name: string; readonly at_mm: readonly number[] }[];
  readonly joints: readonly Doc[];
  readonly links: readonly Doc[];
  readonly wheel: Doc;
};

const ask = (layout: unknown, extra: Doc = {}) =>
  askDoor("linkage.bodies", { layout, steps: [{ wheel_travel_mm: 0 }], ...extra });

const withPoint = (name: string, at_mm: readonly number[]) => ({
  ...example,
  points: example.points.map((p) => (p.name === name ? { name, at_mm } : p)),
});
const withJoint = (i: number, change: Doc) => ({
  ...example,
  joints: example.joints.map((j, k) => (k === i ? { ...j, ...change } : j)),
});
const withLink = (i: number, change: Doc) => ({
  ...example,
  links: example.links.map((l, k) => (k === i ? { ...l, ...change } : l)),
});

describe("the published schema of a layout", () => {
  it("is the one in docs", () => {
    expect(read("../../../docs/layout.schema.json")).toEqual(layoutJsonSchema());
  });
});

describe("a layout that cannot be", () => {
  const cases: readonly (readonly [string, unknown, string, string, RegExp])[] = [
    [
      "holds too much",
      withJoint(1, { slides: false }),
      "constraint-too-many",
      "layout.joints",
      /12 constraints, 1 too many/,
    ],
    [
      "holds too little",
      { ...example, links: example.links.slice(1) },
      "constraint-too-few",
      "layout.joints",
      /10 constraints, 1 too few/,
    ],
    [
      "names a body nobody listed",
      withLink(0, { from: { on: "carier-arm", at: "integral-lower" } }),
      "unknown-name",
      "layout.links[0].from.on",
      /carier-arm/,
    ],
    [
      "names a point nobody listed",
      withJoint(2, { at: "arm-outter" }),
      "unknown-name",
      "layout.joints[2].at",
      /arm-outter/,
    ],
    [
      "puts the wheel on the car body",
      { ...example, wheel: { ...example.wheel, on: "car-body" } },
      "unknown-name",
      "layout.wheel.on",
      /car-body/,
    ],
    ["lists the car body", { ...example, bodies: ["knuckle", "car-body"] }, "reserved-name", "layout.bodies[1]", /car/],
    [
      "joins a body with itself",
      withJoint(2, { between: ["knuckle", "knuckle"] }),
      "not-consistent",
      "layout.joints[2].between[1]",
      /knuckle/,
    ],
    [
      "has a link without length",
      withPoint("toe-outer", [-2830, 335, 240]),
      "coincident-points",
      "layout.links[2].to.at",
      /-2830/,
    ],
    [
      "has an axis through one place",
      withPoint("arm-rear-bush", [-2480, 330, 215]),
      "coincident-points",
      "layout.joints[0].axis_through[1]",
      /-2480/,
    ],
    ["has two axes", withJoint(0, { axis: [1, 0, 0] }), "one-of-two", "layout.joints[0].axis", /both/],
    [
      "has an axis without direction",
      withJoint(0, { axis: [0, 0, 0], axis_through: undefined }),
      "zero-axis",
      "layout.joints[0].axis",
      /0, 0, 0/,
    ],
    ["says a name twice", withLink(2, { name: "camber-link" }), "repeated-name", "layout.links[2].name", /camber-link/],
    [
      "steers a link that is not on the car",
      withLink(0, { steered: true }),
      "not-consistent",
      "layout.links[0].steered",
      /true/,
    ],
    [
      "stands on the right",
      { ...example, wheel: { ...example.wheel, centre_mm: [-2680, -760, 315] } },
      "wrong-side",
      "layout.wheel.centre_mm[1]",
      /-760/,
    ],
    [
      "has a point in metres",
      withPoint("toe-outer", [-2.845, 0.69, 0.225]),
      "unit-mixed",
      "layout.points[8].at_mm",
      /-2\.845/,
    ],
    // The integral link through the ball holds nothing: the knuckle can turn, and three other things are held twice.
    [
      "holds one thing twice",
      withPoint("integral-upper", [-2690, 700, 190]),
      "constraints-dependent",
      "layout.joints",
      /integral-link/,
    ],
  ];

  it.each(cases)("is refused where it %s", (_, layout, code, path, got) => {
    const answer = ask(layout);
    const findings = "findings" in answer ? answer.findings : [];
    expect(findings.map((f) => [f.code, f.path])).toContainEqual([code, path]);
    expect(findings.find((f) => f.code === code)?.got).toMatch(got);
    expect(findings.every((f) => f.needed !== "")).toBe(true);
  });

  it("is told everything at once", () => {
    const wrong = { ...withJoint(2, { at: "nowhere" }), links: example.links.slice(1) };
    const answer = ask(wrong, { steps: [{ wheel_travel_mm: 0, rack_mm: 3 }] });
    const findings = "findings" in answer ? answer.findings.map((f) => f.code) : [];
    expect(findings).toEqual(expect.arrayContaining(["unknown-name", "constraint-too-few", "nothing-steered"]));
  });
});

describe("a layout that binds", () => {
  // A camber link so short that it comes into line with the knuckle's ball within the travel.
  const short = withPoint("camber-inner", [-2690, 560, 452]);

  it("says at which travel and in which joints, and is refused just beyond", () => {
    const answer = ask(short);
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const { report } = answer.output as {
      report: { binds: Record<"low" | "high", { at_mm: number; joints: { joint: string; share: number }[] } | null> };
    };
    const ends = (["low", "high"] as const).flatMap((side) => report.binds[side] ?? []);
    expect(ends.length).toBeGreaterThan(0);
    for (const { at_mm, joints } of ends) {
      expect(joints[0]?.share).toBe(1);
      expect(joints.map((j) => j.joint)).toContain("camber-link");
      const within = at_mm - Math.sign(at_mm) * 1e-4;
      const beyond = at_mm + Math.sign(at_mm) * 1e-4;
      const tried = ask(short, { steps: [{ wheel_travel_mm: within }, { wheel_travel_mm: beyond }] });
      const positions = "output" in tried ? (tried.output as { positions: Doc[] }).positions : [];
      expect(positions[0]).toHaveProperty("camber_deg");
      expect(positions[1]).toEqual({
        refused: { code: "beyond-fold", fold_travel_mm: expect.closeTo(at_mm, 6), joints: expect.any(Array) },
      });
      const locked = positions[1] as { readonly refused: { readonly joints: readonly { readonly joint: string }[] } };
      expect(locked.refused.joints.map(({ joint }) => joint)).toContain("camber-link");
    }
  });
});
