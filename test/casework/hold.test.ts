import { describe, expect, it } from "vitest";
import { computeHandTest, computeHold, type HandQuestion, type HandTest, type Hold } from "#casework";
import { askDoor, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { mirrorY, norm } from "#numeric";
import { assembleCorner, type Corner, type Family, familyFromSilhouette } from "#vehicle";

const familyOf = (id: string): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const ouzel = familyOf("ouzel-saloon");

const holdOf = (family: Family, corner: Corner): Hold => {
  const answer = computeHold(family, corner);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.hold;
};
const left = holdOf(ouzel, "rear-left");
const joint = (hold: Hold, state: string, position: string) => {
  const found = hold.states.find(({ key }) => key === state)?.joints.find((one) => one.position === position);
  if (!found) throw new Error(`no ${position} in ${state}`);
  return found;
};

const asked: HandQuestion = {
  corner: "rear-left",
  held: { kind: "under", part: "spring-link" },
  position: "rear-left/trailing-link/inner-bush",
  fault: { kind: "torn", grade: 3 },
  way: { kind: "rock", at: "3-9", moment: 150 },
};
const testOf = (question: Partial<HandQuestion>): HandTest => {
  const answer = computeHandTest(ouzel, { ...asked, ...question });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.test;
};
const figure = (test: HandTest, key: string) => {
  const found = test.figures.find((one) => one.key === key);
  if (!found) throw new Error(`no figure ${key}`);
  return found;
};

describe("load states of a corner", { timeout: 60_000 }, () => {
  it("are the mirror image on the other side", () => {
    const right = holdOf(ouzel, "rear-right");
    expect(right.states.map(({ key }) => key)).toEqual(left.states.map(({ key }) => key));
    for (const { key, joints } of left.states)
      for (const { position, force, low, high } of joints) {
        const twin = joint(right, key, position.replace("rear-left", "rear-right"));
        const turned = mirrorY(force);
        expect(norm([0, 1, 2].map((i) => (turned[i] as number) - (twin.force[i] as number)) as never)).toBeLessThan(
          1e-6,
        );
        expect([twin.low, twin.high]).toEqual([low, high]);
      }
  });

  it("give each load inside its band, and a wider band where hard points are known worse", () => {
    for (const { joints } of left.states)
      for (const { load, low, high } of joints) {
        expect(load).toBeGreaterThanOrEqual(low);
        expect(load).toBeLessThanOrEqual(high);
      }
    const made = familyFromSilhouette({ rearLayout: "five-link" });
    if ("findings" in made) throw new Error("no family");
    const scaled = holdOf(made.family, "rear-left");
    const share = (hold: Hold): number => {
      const outer = hold.states[0]?.joints.find(({ position }) => position.endsWith("spring-link/outer-bush"));
      return outer ? (outer.high - outer.low) / outer.load : Number.NaN;
    };
    expect(share(scaled)).toBeGreaterThan(3 * share(left));
  });

  it("say the joint that carries the car and how it is freed, as the trade does for a spring on a lower link", () => {
    expect(left.sentence).toMatch(
      /^Standing, the outer bush of the spring link carries the car, pressed together by 3\.4 kN/,
    );
    const way = left.best.find(({ position }) => position === "rear-left/spring-link/outer-bush");
    expect(way).toMatchObject({ state: "under/spring-link", by: "hand" });
    expect(joint(left, "ride", "rear-left/spring-link/outer-bush").by).toBe("nothing");
  });

  it("propose no support but under the part the spring stands on, and warn of a steered link", () => {
    for (const id of Object.keys(demoFamilySheets)) {
      const family = familyOf(id);
      for (const corner of ["front-left", "rear-left"] as const) {
        const hold = holdOf(family, corner);
        const { seat } = assembleCorner(family, corner).spring;
        const links = assembleCorner(family, corner).links;
        const part = seat.on === "knuckle" ? null : links[seat.on === "link" ? seat.link : seat.links[0]];
        const arm = links.filter(({ arm: name }) => name !== null && name === part?.arm);
        const keys = [part, ...arm].map((link) => `under/${link?.name}`);
        for (const { state } of hold.best)
          if (state?.startsWith("under/")) expect(keys, `${id} ${corner}`).toContain(state);
        for (const { held, how } of hold.states)
          if (held.kind === "under" && links.find(({ name }) => name === held.part)?.steered)
            expect(how).toContain("no place to lift at");
        expect(hold.cautions.join(" ")).toMatch(/jack only/);
      }
    }
  });

  it("put the spring on the top mount of a strut, which carries it standing and less of it hanging", () => {
    const hold = holdOf(familyOf("dunlin-hatch"), "front-left");
    const standing = hold.states.find(({ key }) => key === "ride");
    const mount = "front-left/strut/top-mount";
    expect(joint(hold, "ride", mount).load).toBeGreaterThan(0.98 * (standing?.spring ?? Number.NaN));
    expect(joint(hold, "hanging", mount).load).toBeLessThan(0.2 * joint(hold, "ride", mount).load);
  });

  it("are those of the calculation linkage.load-states", () => {
    const a = assembleCorner(ouzel, "rear-left");
    const mm = (p: readonly number[]): number[] => p.map((x) => 1000 * x);
    const seat = (one: typeof a.spring | typeof a.damper) => ({
      body_mm: mm(one.body),
      on: one.seat.on === "link" ? a.links[one.seat.link]?.name : "knuckle",
      moving_mm: mm(one.seatAt),
    });
    const answer = askDoor("linkage.load-states", {
      links: a.links.map((l) => ({ name: l.name, inner_mm: mm(l.inner.at), outer_mm: mm(l.outer.at) })),
      wheel: {
        centre_mm: mm(a.wheel.centre),
        camber_deg: (a.wheel.camber * 180) / Math.PI,
        toe_deg: (a.wheel.toe * 180) / Math.PI,
        loaded_radius_mm: 1000 * a.wheel.loadedRadius,
      },
      spring: { ...seat(a.spring), rate_n_per_mm: a.spring.rate / 1000 },
      damper: seat(a.damper),
      wheel_load_n: a.wheelLoad,
      unsprung_kg: a.unsprungMass,
      droop_stop_mm: 1000 * a.droopStop,
      under: [{ link: "spring-link" }],
    });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const { states } = answer.output as {
      readonly states: readonly { joints: readonly { link: string; end: string; load_n: number }[] }[];
    };
    for (const [i, key] of ["ride", "hanging", "under/spring-link"].entries()) {
      const spring = states[i]?.joints.find(({ link, end }) => link === "spring-link" && end === "outer");
      expect(joint(left, key, "rear-left/spring-link/outer-bush").load).toBeCloseTo(spring?.load_n ?? Number.NaN, 6);
    }
  });
});

describe("a hand test", { timeout: 60_000 }, () => {
  it("of a bar is twice the force over the rate, torn over what is left of it", () => {
    const test = testOf({ way: { kind: "bar", force: 500 } });
    const bush = assembleCorner(ouzel, "rear-left").links.find(({ name }) => name === "trailing-link")?.innerJoint;
    const sound = 1e6 / (bush?.radial ?? Number.NaN);
    expect(figure(test, "hand-sound").value).toBeCloseTo(sound, 9);
    const share = bush?.tornShare[3];
    if (!share) throw new Error("no share");
    expect(figure(test, "hand-faulty").range?.[0]).toBeCloseTo(sound / share.high, 9);
    expect(figure(test, "hand-faulty").range?.[1]).toBeCloseTo(sound / share.low, 9);
    expect(test.tells).toBe("yes");
  });

  it("moves twice as far for twice the moment, and its band holds the value and the range of the fault", () => {
    const [one, two] = [testOf({}), testOf({ way: { kind: "rock", at: "3-9", moment: 300 } })];
    for (const key of ["hand-sound", "hand-faulty"]) {
      expect(figure(two, key).value).toBeCloseTo(2 * figure(one, key).value, 9);
      const { band, value } = figure(one, key);
      expect(value).toBeGreaterThan(band?.[0] ?? Number.NaN);
      expect(value).toBeLessThan(band?.[1] ?? Number.NaN);
    }
    expect(one.sentence).toContain("front of the tyre moves");
  });

  it("shows play only where the hand brings more than presses the joint together", () => {
    const loose = { position: "rear-left/spring-link/outer-bush", fault: { kind: "loose", play: 0.001 } } as const;
    const shut = testOf({ ...loose, held: { kind: "hanging" } });
    expect(figure(shut, "hand-free").value).toBe(0);
    expect(shut.sentence).toContain("its play stays shut");
    expect(shut.tells).toBe("no");
    const open = testOf(loose);
    expect(figure(open, "hand-free").value).toBeGreaterThan(0.5);
    expect(figure(open, "hand-brings").value).toBeGreaterThan(figure(open, "joint-load").value);
    expect(open.tells).toBe("yes");
  });

  it("is refused on a wheel that stands, at a joint of another corner, and for a force nobody has, all at once", () => {
    const codes = (question: Partial<HandQuestion>) => {
      const answer = computeHandTest(ouzel, { ...asked, ...question });
      return "findings" in answer ? answer.findings.map(({ code, path }) => `${code} ${path}`) : [];
    };
    expect(codes({ held: { kind: "ride" } })).toEqual(["wheel-on-ground way"]);
    expect(codes({ position: "front-left/lower-arm/ball-joint" })).toEqual(["unknown-position position"]);
    expect(
      codes({
        position: "rear-left/toe-link/outer-joint",
        way: { kind: "bar", force: 1e5 },
      }),
    ).toEqual(["no-torn-share fault.grade", "out-of-range way.force"]);
    expect(codes({ held: { kind: "under", part: "no-such-link" } })).toEqual(["cannot-carry held"]);
  });
});
