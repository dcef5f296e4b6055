import { describe, expect, it } from "vitest";
import { cross, type Vector } from "#numeric";
import { differentiateAll, makeRandom } from "../../../test/fuzz/differences.ts";
import { readElasticCorners, readVoidedCorners } from "../../../test/fuzz/reference-corners.ts";
import { type CornerLoad, type ElasticCorner, type ElasticFault, NO_LOAD } from "./elastic-corner.ts";
import { advancePose, clonePose, designPose, type Pose } from "./pose.ts";
import { ComplianceSolver, type ElasticState } from "./solve-compliance.ts";
import { computeWheelWrench, contactWithChange } from "./wheel-forces.ts";

const loads: CornerLoad = { ...NO_LOAD, lateral: 800, braking: 1500, drive: -300, aligning: 40 };

function solved(solver: ComplianceSolver, load: CornerLoad): ElasticState {
  const answer = solver.solve(load);
  if (!("state" in answer)) throw new Error("no balance");
  return answer.state;
}

/** Energy stored in all members at a pose; the balance puts each on its side of its play. */
function energyAt(solver: ComplianceSolver, state: ElasticState, pose: Pose): number {
  const { terms, free, playTerms } = solver.balance;
  return terms.reduce((sum, term, i) => {
    const slot = playTerms.indexOf(i);
    const side = slot < 0 ? 0 : (state.branch[slot] as number);
    if (slot >= 0 && side === 0) return sum;
    const stretch = term.at(pose, 0).value - (free[i] as number) - (side * term.play) / 2;
    return sum + (term.rate * stretch * stretch) / 2;
  }, 0);
}

const unitStep = (j: number): Float64Array => Float64Array.from({ length: 6 }, (_, i) => (i === j ? 1 : 0));

/** Generalised displacement of each load: patch point of the knuckle, wheel centre, turn about z. */
function responses(solver: ComplianceSolver, at: ElasticState): number[][] {
  const { offset } = contactWithChange(solver.balance.linkage, at.pose);
  const onPatch = (f: Vector): number[] => [...f, ...cross(offset, f)];
  const wrenches = [onPatch([0, 1, 0]), onPatch([-1, 0, 0]), [1, 0, 0, 0, 0, 0], [0, 0, 0, 0, 0, 1]];
  return wrenches.map((wrench) => {
    const { v, w } = solver.balance.responseTo(wrench);
    return wrenches.map((other) => [...v, ...w].reduce((sum, x, i) => sum + x * (other[i] as number), 0));
  });
}

const soft = (corner: ElasticCorner): readonly ElasticFault[] => {
  const [first] = corner.elasticity.rubber;
  return first ? [{ kind: "soft", link: first.link, end: first.end, factor: 0.25 }] : [];
};

describe.each([...readElasticCorners(), ...readVoidedCorners()])("the balance of $name", ({ corner }) => {
  const solver = new ComplianceSolver(corner);
  const state = solved(solver, loads);

  it("keeps design under the wheel load alone, whatever is soft but unloaded", () => {
    const still = solved(solver, NO_LOAD);
    expect(Math.max(...still.pose.t.map(Math.abs))).toBeLessThan(1e-12);
    expect(still.wheelLoad).toBe(corner.elasticity.wheelLoad);
  });

  it("answers the outer forces with minus the gradient of one potential", () => {
    const gradient = [0, 1, 2, 3, 4, 5].map(
      (j) =>
        differentiateAll(
          (x) => {
            const pose = clonePose(state.pose);
            advancePose(pose, unitStep(j), x);
            return [energyAt(solver, state, pose)];
          },
          0,
          2e-3,
        )[0] as number,
    );
    const { wrench } = computeWheelWrench(solver.balance.linkage, state.pose, loads, state.wheelLoad);
    gradient.forEach((g, i) => {
      expect(Math.abs(g - (wrench[i] as number))).toBeLessThan(1e-5);
    });
  });

  it("takes no work from a closed loop of loads", () => {
    const steps = 48;
    let work = 0;
    let turnover = 0;
    for (let k = 0; k < steps; k++) {
      const angle = (2 * Math.PI * k) / steps;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const load: CornerLoad = { ...NO_LOAD, lateral: 900 * c, braking: 1200 * s, aligning: 50 * c, drive: 200 * s };
      const here = solved(solver, load);
      solver.balance.factoriseAt(here.balance, load);
      const { offset } = contactWithChange(solver.balance.linkage, here.pose);
      const change: Vector = [-1200 * c, -900 * s, 0];
      const moment = cross(offset, change);
      const { v, w } = solver.balance.responseTo([
        change[0] + 200 * c,
        change[1],
        0,
        moment[0],
        moment[1],
        moment[2] - 50 * s,
      ]);
      const { wrench } = computeWheelWrench(solver.balance.linkage, here.pose, load, here.wheelLoad);
      const power = [...v, ...w].reduce((sum, x, i) => sum + x * (wrench[i] as number), 0);
      work += (power * 2 * Math.PI) / steps;
      turnover += (Math.abs(power) * 2 * Math.PI) / steps;
    }
    expect(turnover).toBeGreaterThan(1);
    expect(Math.abs(work)).toBeLessThan(1e-9 * turnover);
  });

  it.each(["wheel-load", "contact-height"] as const)(
    "is reciprocal under the wheel load, %s held, sound and soft",
    (hold) => {
      for (const faults of [[], soft(corner)]) {
        const one = new ComplianceSolver({ ...corner, hold, faults });
        const still = solved(one, NO_LOAD);
        one.balance.factoriseAt(still.balance, NO_LOAD);
        const matrix = responses(one, still);
        const size = Math.max(...matrix.flat().map(Math.abs));
        matrix.forEach((row, i) => {
          row.forEach((x, j) => {
            expect(Math.abs(x - (matrix[j]?.[i] as number))).toBeLessThan(1e-12 * size);
          });
        });
        for (let i = 0; i < 4; i++) expect(matrix[i]?.[i]).toBeGreaterThan(0);
      }
    },
  );

  it("has tangents that agree with differences of whole balances", () => {
    const rates = solver.solveLoadRates();
    if (!rates) throw new Error("no balance");
    const kinds = [
      ["lateral", rates.lateral, 200],
      ["braking", rates.braking, 200],
      ["drive", rates.drive, 200],
      ["aligning", rates.aligning, 20],
    ] as const;
    for (const [kind, rate, step] of kinds) {
      const differences = differentiateAll(
        (x) => {
          const { attitude } = solved(solver, { ...NO_LOAD, [kind]: x });
          return [attitude.toe, attitude.camber, -attitude.spin, ...attitude.centre, ...attitude.contact];
        },
        0,
        step,
      );
      const exact = [rate.toe, rate.camber, rate.caster, ...rate.centre, ...rate.contact];
      const size = Math.max(...exact.map(Math.abs));
      exact.forEach((e, i) => {
        expect(Math.abs(e - (differences[i] as number)), `${kind} ${i}`).toBeLessThan(1e-7 * size);
      });
      expect(exact.filter((e, i) => e === differences[i]).length).toBeLessThan(exact.length);
    }
  });

  it("holds the patch where it is asked to", () => {
    const held = new ComplianceSolver({ ...corner, hold: "contact-height" });
    for (const rise of [-0.03, 0.02]) {
      const at = solved(held, { ...loads, contactRise: rise });
      expect(at.attitude.contact[2] - held.designContact[2]).toBeCloseTo(rise, 13);
    }
  });

  it("is that of the rigid linkage where nothing but the spring gives", () => {
    const { strutTop: _top, trailingArm: _arm, ...rest } = corner.elasticity;
    const rigid = new ComplianceSolver({
      ...corner,
      hold: "contact-height",
      elasticity: { ...rest, rubber: [], members: [] },
    });
    const at = solved(rigid, { ...loads, contactRise: 0.02 });
    const unloaded = solved(rigid, { ...NO_LOAD, contactRise: 0.02 });
    expect(Math.max(...at.pose.r.map((x, i) => Math.abs(x - (unloaded.pose.r[i] as number))))).toBeLessThan(1e-12);
    expect(at.wheelLoad).not.toBeCloseTo(unloaded.wheelLoad, 3);
  });

  it("with a rigid link is that with an immensely stiff one", () => {
    for (const hold of ["wheel-load", "contact-height"] as const) {
      const link = corner.geometry.links.at(-1)?.name ?? "";
      const rubber = corner.elasticity.rubber.filter((r) => r.link !== link);
      const members = corner.elasticity.members.filter((m) => m.link !== link);
      const stiff = [...members, { link, rate: 1e12 }];
      const [rigid, nearly] = [members, stiff].map((list) =>
        solved(
          new ComplianceSolver({ ...corner, hold, elasticity: { ...corner.elasticity, rubber, members: list } }),
          loads,
        ),
      ) as [ElasticState, ElasticState];
      expect(Math.max(...rigid.pose.r.map((x, i) => Math.abs(x - (nearly.pose.r[i] as number))))).toBeLessThan(1e-7);
      expect(Math.abs(rigid.wheelLoad - nearly.wheelLoad)).toBeLessThan(0.1);
      for (const [name, force] of Object.entries(rigid.linkForces))
        expect(Math.abs(force - (nearly.linkForces[name] as number))).toBeLessThan(0.1);
      expect(Math.abs(rigid.linkForces[link] as number)).toBeGreaterThan(1);
    }
  });

  it("names every link's force and the mount's", () => {
    expect(Object.keys(state.linkForces).sort()).toEqual(corner.geometry.links.map((l) => l.name).sort());
    const mounts = [
      ...(corner.geometry.strut ? ["strut_top"] : []),
      ...(corner.geometry.trailingArm ? ["trailing_arm"] : []),
    ];
    expect(Object.keys(state.mountForces)).toEqual(mounts);
  });
});

describe.each(readElasticCorners())("play in a link of $name", ({ corner }) => {
  const link = corner.geometry.links[0]?.name ?? "";
  const loose = new ComplianceSolver({ ...corner, faults: [{ kind: "play", link, total: 6e-4 }] });

  it("is one of the sides of its gap, which the force confirms", () => {
    const random = makeRandom(11);
    for (let trial = 0; trial < 12; trial++) {
      const load = { ...NO_LOAD, lateral: 4000 * (random() - 0.5), braking: 4000 * (random() - 0.5) };
      const answer = loose.solve(load);
      if (!("state" in answer)) throw new Error("no balance");
      const all = [answer.state, ...answer.others];
      expect(all.length % 2).toBe(1);
      expect(all.filter((s) => s.stable).length).toBe((all.length + 1) / 2);
      for (const state of all) expect(Math.sign(state.linkForces[link] ?? Number.NaN)).toBe(state.branch[0]);
    }
  });

  it("in a rigid link lets it go slack or meet either end of its gap", () => {
    const members = corner.elasticity.members.filter((m) => m.link !== link);
    const rubber = corner.elasticity.rubber.filter((r) => r.link !== link);
    const faults: readonly ElasticFault[] = [{ kind: "play", link, total: 6e-4 }];
    const solverWith = (rate: number | null) =>
      new ComplianceSolver({
        ...corner,
        faults,
        elasticity: { ...corner.elasticity, rubber, members: rate === null ? members : [...members, { link, rate }] },
      });
    const [rigid, nearly] = [solverWith(null), solverWith(1e12)];
    for (const lateral of [-2500, -900, 0, 900, 2500]) {
      const load = { ...NO_LOAD, lateral };
      const [a, b] = [rigid.solve(load), nearly.solve(load)];
      if (!("state" in a) || !("state" in b)) throw new Error("no balance");
      expect(a.state.branch).toEqual(b.state.branch);
      expect(a.others.length).toBe(b.others.length);
      expect(Math.abs(a.state.attitude.toe - b.state.attitude.toe)).toBeLessThan(1e-7);
      expect(Math.abs((a.state.linkForces[link] as number) - (b.state.linkForces[link] as number))).toBeLessThan(0.5);
    }
  });

  it("of no width is no play", () => {
    const none = solved(new ComplianceSolver({ ...corner, faults: [{ kind: "play", link, total: 0 }] }), loads);
    const sound = solved(new ComplianceSolver(corner), loads);
    expect([...none.pose.t, ...none.pose.r]).toEqual([...sound.pose.t, ...sound.pose.r]);
  });

  it("keeps the solver's own start pose untouched", () => {
    const before = designPose(1);
    loose.solve(loads);
    expect([...designPose(1).t]).toEqual([...before.t]);
  });
});

describe("near zero link force", () => {
  it.each([
    ["rear_five_link", "upper_front", "wheel-load", 1440],
    ["front_strut_open", "tie_rod", "contact-height", -1080],
  ] as const)(
    "%s with a loose %s and the %s held has three balances, the middle one unstable",
    (name, link, hold, lateral) => {
      const corner = readElasticCorners().find((one) => one.name === name)?.corner;
      if (!corner) throw new Error(`no ${name}`);
      const loose = new ComplianceSolver({ ...corner, hold, faults: [{ kind: "play", link, total: 2e-3 }] });
      const answer = loose.solve({ ...NO_LOAD, lateral });
      if (!("state" in answer)) throw new Error("no balance");
      const all = [answer.state, ...answer.others];
      expect(all.map((s) => s.branch[0]).sort()).toEqual([-1, 0, 1]);
      for (const state of all) expect(state.stable).toBe(state.branch[0] !== 0);
      // Side by side within what the play lets move, not a corner turned over.
      for (const state of all)
        expect(Math.max(...state.pose.t.map((x, i) => Math.abs(x - (answer.state.pose.t[i] as number))))).toBeLessThan(
          0.02,
        );
    },
  );
});
