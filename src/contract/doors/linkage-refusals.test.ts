import { describe, expect, it } from "vitest";
import type { Finding } from "#numeric";
import {
  compliance,
  DOUBLE_WISHBONE,
  type Request,
  spoiltRequests,
  travel,
  validRequest,
} from "../../../test/fuzz/spoilt-requests.ts";
import { askDoor, askDoorText } from "../registry.ts";

/** Findings for a valid request that was spoilt. */
function refuse(door: string, layout: string, spoil: (r: Request) => void): readonly Finding[] {
  const spoilt = validRequest(door, layout);
  spoil(spoilt);
  const answer = askDoor(door, spoilt);
  if (!("findings" in answer)) throw new Error("was answered");
  return answer.findings;
}

const at = (findings: readonly Finding[], path: string): Finding | undefined => findings.find((f) => f.path === path);

describe("refused, each with its place, what came and what was needed", () => {
  it.each(spoiltRequests.map((c) => [c.what, c] as const))("%s", (_, { door, layout, spoil, findings }) => {
    const said = refuse(door, layout ?? DOUBLE_WISHBONE, spoil);
    for (const [path, code, ...words] of findings) {
      const finding = at(said, path);
      expect(finding, `${path} in ${JSON.stringify(said.map((f) => f.path))}`).toBeDefined();
      expect(finding?.code).toBe(code);
      for (const word of words) expect(`${finding?.got} ${finding?.needed} ${finding?.hint}`).toContain(word);
    }
  });

  it("says nothing more than what is wrong", () => {
    const exact = spoiltRequests.filter((c) => c.what !== "many slips at once" && c.what !== "two links on one line");
    for (const { what, door, layout, spoil, findings } of exact) {
      const said = refuse(door, layout ?? DOUBLE_WISHBONE, spoil).map((f) => f.path);
      const derived = said.filter((path) => !findings.some(([wanted]) => wanted === path));
      // Renaming or removing a link leaves what spoke of it without its link; nothing else may be said twice.
      if (!/nobody knows|a link less|names twice/.test(what)) expect(derived, what).toEqual([]);
    }
  });
});

describe("a step beyond the end of the branch", () => {
  it("is refused by itself, with where it folds; the others are answered", () => {
    const r = validRequest(travel, DOUBLE_WISHBONE);
    r.steps = [
      { wheel_travel_mm: 500 },
      { wheel_travel_mm: 10 },
      { wheel_travel_mm: -500 },
      { wheel_travel_mm: 0, rack_mm: 900 },
    ];
    const answer = askDoor(travel, r);
    if (!("output" in answer)) throw new Error("was refused as a whole");
    const { positions, report } = answer.output as { positions: Request[]; report: Record<string, unknown> };
    expect(Object.keys(positions[0].refused)).toEqual(["code", "fold_travel_mm"]);
    expect(positions[0].refused.code).toBe("beyond-fold");
    expect(positions[0].refused.fold_travel_mm).toBeCloseTo(290.55077, 4);
    expect(positions[1].wheel_centre_mm[2]).toBeCloseTo(322, 9);
    expect(positions[2].refused.fold_travel_mm).toBeCloseTo(-213.36856, 4);
    expect(positions[3].refused).toEqual({ code: "rack-beyond-fold", fold_travel_mm: null });
    expect(report).toEqual({ end: "binds", binds_at_mm: [null, null] });
  });

  it("has joints that lock: the rack ends where the tie rod is in line, the wheel hanging where the upper arm is", () => {
    const { links, wheel } = validRequest(travel, DOUBLE_WISHBONE);
    const steps = [{ wheel_travel_mm: 500 }, { wheel_travel_mm: -500 }, { wheel_travel_mm: 0, rack_mm: 900 }];
    const answer = askDoor("linkage.joints", { links, wheel, steps });
    if (!("output" in answer)) throw new Error("was refused");
    const { positions, binds } = answer.output as { positions: Request[]; binds: unknown };
    expect(binds).toEqual({ low: null, high: null });
    expect(positions[2].refused).toMatchObject({ code: "rack-beyond-fold", fold_travel_mm: null });
    expect(positions[2].refused.fold_rack_mm).toBeCloseTo(172.3114, 3);
    expect(positions.map((p) => p.refused.joints[0].joint)).toEqual(["lower_rear", "upper_front", "tie_rod"]);
  });

  it("is where the linkage binds, if that is within 200 mm", () => {
    const r = validRequest(travel, DOUBLE_WISHBONE);
    // Shorter upper links: the upper arm is stretched sooner.
    for (const i of [0, 1]) r.links[i].inner_mm[1] += 120;
    const answer = askDoor(travel, r);
    if (!("output" in answer)) throw new Error("was refused");
    const { report } = answer.output as { report: { binds_at_mm: (number | null)[] } };
    const [low] = report.binds_at_mm;
    const locks = askDoor("linkage.joints", { links: r.links, wheel: r.wheel, steps: [{ wheel_travel_mm: 0 }] });
    if (!("output" in locks)) throw new Error("was refused");
    const { binds } = locks.output as Request;
    expect(binds.low.at_mm).toBe(low);
    expect(binds.low.joints[0].joint).toMatch(/upper/);
    if (low === null || low === undefined) throw new Error("does not bind");
    r.steps = [{ wheel_travel_mm: low - 0.001 }, { wheel_travel_mm: low + 0.001 }];
    const close = askDoor(travel, r);
    if (!("output" in close)) throw new Error("was refused");
    const [beyond, before] = (close.output as { positions: Request[] }).positions;
    expect(beyond.refused.fold_travel_mm).toBeCloseTo(low, 6);
    expect(before.refused).toBeUndefined();
  });
});

describe("a corner that finds no balance under a load", () => {
  it("is said at that load; the others are answered", () => {
    const r = validRequest(compliance, DOUBLE_WISHBONE);
    r.loads = [{ braking_n: 1e9 }, { braking_n: 500 }];
    const answer = askDoor(compliance, r);
    if (!("output" in answer)) throw new Error("was refused as a whole");
    const { states } = answer.output as { states: Request[] };
    expect(states[0].refused.code).toBe("no-equilibrium");
    expect(states[0].refused.carried.leg).toBe("load");
    expect(states[0].refused.carried.share).toBeGreaterThan(0);
    expect(states[0].refused.carried.share).toBeLessThan(1);
    expect(states[1].stable).toBe(true);
  });
});

describe("a corner whose links are all loose", () => {
  it("is answered, each balance once", () => {
    const r = validRequest(compliance, DOUBLE_WISHBONE);
    const links = r.links as readonly { name: string }[];
    expect(links.length).toBe(5);
    r.faults = links.map(({ name }) => ({ kind: "play", link: name, total_mm: 0.8 }));
    r.loads = [{ braking_n: 500 }];
    const answer = askDoor(compliance, r);
    if (!("output" in answer)) throw new Error("was refused as a whole");
    const { states } = answer.output as { states: Request[] };
    expect(states[0].others.length % 2).toBe(0);
    expect(typeof states[0].toe_deg).toBe("number");
  });
});

describe("texts that are no request", () => {
  const MEGABYTES = 50;

  it("of 50 MB are read as far as one input may be long, and refused", () => {
    const listed = `{"links":[${"1,".repeat((MEGABYTES * 1024 * 1024) / 2)}1]}`;
    const answer = askDoorText(travel, listed);
    expect("findings" in answer && answer.findings.map((f) => f.code)).toEqual(["too-many-values"]);
    const named = `{"links":"${"x".repeat(MEGABYTES * 1024 * 1024)}"}`;
    const other = askDoorText(travel, named);
    if (!("findings" in other)) throw new Error("was answered");
    expect(other.findings.map((f) => f.path)).toEqual(expect.arrayContaining(["links", "wheel", "steps"]));
    expect(Math.max(...other.findings.map((f) => f.got.length))).toBeLessThan(300);
  }, 60_000);

  it("with NaN and a key twice are refused with both said", () => {
    const answer = askDoorText(
      "alignment.axle",
      '{"left_toe_deg": NaN, "right_toe_deg": 0.1, "right_toe_deg": 0.2, "rim_diameter_mm": 400}',
    );
    if (!("findings" in answer)) throw new Error("was answered");
    expect(answer.findings.map((f) => [f.path, f.code])).toEqual([
      ["left_toe_deg", "not-a-number"],
      ["right_toe_deg", "duplicate-key"],
    ]);
  });

  it("that are not objects, or name no calculation, are refused", () => {
    for (const text of ["null", "[]", "3", '"x"']) {
      const answer = askDoorText(travel, text);
      expect("findings" in answer && answer.findings[0]?.code).toBe("wrong-type");
    }
    const answer = askDoor("linkage.travl", {});
    expect("findings" in answer && answer.findings[0]).toMatchObject({
      code: "unknown-calculation",
      hint: "The nearest is linkage.travel.",
    });
  });
});

describe("alignment requests", () => {
  it("are refused where figures are out of range", () => {
    const answer = askDoor("alignment.caster-from-sweep", { camber_in_deg: -60, camber_out_deg: 1, sweep_deg: 0 });
    if (!("findings" in answer)) throw new Error("was answered");
    expect(answer.findings.map((f) => f.path)).toEqual(["camber_in_deg", "sweep_deg"]);
    const axle = askDoor("alignment.axle", { left_toe_deg: 0.1, right_toe_deg: 0.1, rim_diameter_m: 0.4 });
    if (!("findings" in axle)) throw new Error("was answered");
    expect(axle.findings.map((f) => f.code)).toEqual(["key-unit", "missing-key"]);
  });
});
