import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { askDoor } from "../index.ts";

type Doc = Record<string, unknown>;
type Joint = { part: string; end: string | null; force_n: number[]; load_n: number; play_seen_by: string };
type Movement = { sound_mm: number; faulty_mm: number; free_mm: number; hand_can_tell: boolean };
type Held = {
  joints: Joint[];
  spring_force_n: number;
  stop_force_n: number;
  support_force_n: number;
  rock_12_6: Movement | null;
  rock_3_9: Movement;
  pushes: Movement[];
};

const file = JSON.parse(
  readFileSync(new URL("../../../docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url), "utf8"),
) as Doc & { layout: Doc };
const { sd_mm: _sd, torn_share: _torn, ...bodies } = file;
const request: Doc = {
  ...bodies,
  unsprung_kg: 40,
  droop_stop_mm: 80,
  under: [{ part: "carrier-arm" }],
  pushes: [{ at_mm: [-2380, 760, 315], force_n: [0, 200, 0] }],
};
const ask = (change: Doc = {}): { states: Held[]; best: { part: string; state: number | null }[] } => {
  const answer = askDoor("linkage.bodies-load-states", JSON.parse(JSON.stringify({ ...request, ...change })));
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output as { states: Held[]; best: { part: string; state: number | null }[] };
};
const [ride, hanging, under] = ask().states as [Held, Held, Held];
const joint = (state: Held, part: string): Joint => state.joints.find((j) => j.part === part) as Joint;

describe("a carrier arm with an integral link, held", () => {
  it("is in balance: body, spring, ground and weight add up to nothing", () => {
    const along = [0, 30, -315].map((x) => x / Math.hypot(30, 315));
    for (const axis of [0, 1, 2]) {
      const held = ["arm-front", "arm-rear", "camber-link", "toe-link"].reduce(
        (sum, part) => sum + (joint(ride, part).force_n[axis] as number),
        0,
      );
      const outside = axis === 2 ? 4200 - 40 * 9.80665 : 0;
      expect(held + ride.spring_force_n * (along[axis] as number) + outside).toBeCloseTo(0, 6);
    }
    expect(ride.spring_force_n).toBeGreaterThan(4000);
    expect(hanging.stop_force_n).toBeGreaterThan(0);
    expect(under.support_force_n).toBeGreaterThan(100);
  });

  it("rocks only where the wheel is free, and moves more with a torn or loose joint", () => {
    expect(ride.rock_12_6).toBeNull();
    const faulty = ask({
      faults: [
        { part: "toe-link", end: "from", factor: 0.2 },
        { part: "arm-ball", kind: "play", total_mm: 1 },
      ],
    }).states[1] as Held;
    for (const moved of [faulty.rock_3_9, faulty.pushes[0] as Movement]) {
      expect(moved.faulty_mm).toBeGreaterThan(moved.sound_mm);
      expect(moved.free_mm).toBeGreaterThan(0);
    }
    expect(hanging.rock_3_9.faulty_mm).toBeCloseTo(hanging.rock_3_9.sound_mm, 12);
    expect(hanging.rock_3_9.hand_can_tell).toBe(false);
    const widened = ask({
      faults: [{ part: "arm-ball", kind: "play", total_mm: 1, total_low_mm: 0.5, total_high_mm: 2 }],
    }).states[1]?.rock_3_9 as Movement & { moved_range_mm: [number, number] };
    const [low, high] = widened.moved_range_mm;
    expect((high - widened.faulty_mm) / (low - widened.faulty_mm)).toBeCloseTo(4, 9);
  });

  it("takes what the hanging wheel presses together off the joint that carries the arm", () => {
    const ball = [ride, hanging, under].map((state) => joint(state, "arm-ball").load_n);
    expect(Math.min(...ball)).toBeLessThan(0.5 * (ball[0] as number));
    const { best } = ask();
    expect(best.map(({ part }) => part)).toContain("arm-ball");
  });

  it("answers for the right side as for the left one's mirror image", () => {
    const flip = (p: number[]) => [p[0], -(p[1] as number), p[2]];
    const layout = {
      ...bodies.layout,
      points: (bodies.layout.points as { name: string; at_mm: number[] }[]).map(({ name, at_mm }) => ({
        name,
        at_mm: flip(at_mm),
      })),
      wheel: {
        ...(bodies.layout.wheel as Doc),
        centre_mm: flip((bodies.layout.wheel as { centre_mm: number[] }).centre_mm),
      },
    };
    const right = ask({
      side: "right",
      layout,
      rubber: [],
      members: [],
      pushes: [{ at_mm: [-2380, -760, 315], force_n: [0, -200, 0] }],
    }).states[2] as Held;
    expect(joint(right, "arm-ball").force_n[1]).toBeCloseTo(-(joint(under, "arm-ball").force_n[1] as number), 6);
    expect(joint(right, "toe-link").load_n).toBeCloseTo(joint(under, "toe-link").load_n, 6);
  });

  const { damper: _damper, ...undamped } = bodies.layout;
  it.each<[string, Doc, string, string]>([
    ["a support under nothing", { under: [{ part: "carrier-ram" }] }, "unknown-name", "under[0].part"],
    ["a hanging wheel without a stop", { layout: undamped }, "missing-key", "layout.damper"],
    [
      "play of less than nothing",
      { faults: [{ part: "arm-ball", kind: "play", total_mm: -1 }] },
      "out-of-range",
      "faults[0].total_mm",
    ],
    ["no mass", { unsprung_kg: undefined }, "missing-key", "unsprung_kg"],
  ])("refuses %s, and says where", (_what, change, code, path) => {
    const answer = askDoor("linkage.bodies-load-states", JSON.parse(JSON.stringify({ ...request, ...change })));
    if (!("findings" in answer)) throw new Error("was answered");
    expect(answer.findings.map((f) => ({ code: f.code, path: f.path }))).toEqual([{ code, path }]);
  });
});
