import { describe, expect, it } from "vitest";
import { makeRandom } from "../../../test/fuzz/differences.ts";
import { readElasticCorners } from "../../../test/fuzz/reference-corners.ts";
import { type CornerLoad, type ElasticCorner, type ElasticFault, NO_LOAD } from "./elastic-corner.ts";
import { type Balance, isStride } from "./equilibrium.ts";
import { allBranches, isConsistent } from "./play-branches.ts";
import { advancePose, clonePose } from "./pose.ts";
import { ComplianceSolver } from "./solve-compliance.ts";

const allLoose = ({ geometry }: ElasticCorner, total: number): readonly ElasticFault[] =>
  geometry.links.map(({ name }) => ({ kind: "play", link: name, total }));

function balancesOf(solver: ComplianceSolver, load: CornerLoad): Balance[] {
  const answer = solver.solve(load);
  if (!("state" in answer)) throw new Error(`no balance: ${answer.unsolved.end}`);
  return [answer.state, ...answer.others].map(({ balance }) => balance);
}

const isIn = (list: readonly Balance[], one: Balance): boolean =>
  list.some(({ pose }) => isStride(pose, one.pose, 1e-6));

/**
 * Lateral force, braking, drive and moment under which the first links (four at most, as many as there are loads) carry
 * nothing, by secants on whole balances: where most balances lie side by side.
 */
function loadThatFreesLinks(corner: ElasticCorner): CornerLoad {
  const kinds = ["lateral", "braking", "drive", "aligning"] as const;
  const links = corner.geometry.links.slice(0, kinds.length).map(({ name }) => name);
  const sound = new ComplianceSolver(corner);
  const forces = (load: CornerLoad): number[] => {
    const [one] = balancesOf(sound, load);
    return links.map((name) => one?.forces[corner.geometry.links.findIndex((l) => l.name === name)] as number);
  };
  let load = NO_LOAD;
  for (let step = 0; step < 8; step++) {
    const here = forces(load);
    const columns = links.map((_, j) => {
      const kind = kinds[j] as (typeof kinds)[number];
      return forces({ ...load, [kind]: load[kind] + 1 }).map((f, i) => f - (here[i] as number));
    });
    // Gauss-Jordan on as few rows as there are links.
    const rows = here.map((f, i) => [...columns.map((column) => column[i] as number), -f]);
    rows.forEach((_, k) => {
      const best = rows.reduce(
        (b, r, i) => (i >= k && Math.abs(r[k] as number) > Math.abs(rows[b]?.[k] as number) ? i : b),
        k,
      );
      [rows[k], rows[best]] = [rows[best] as number[], rows[k] as number[]];
      rows.forEach((row, i) => {
        const m = i === k ? 0 : (row[k] as number) / (rows[k]?.[k] as number);
        for (let j = k; j < row.length; j++) row[j] = (row[j] as number) - m * (rows[k]?.[j] as number);
      });
    });
    rows.forEach((row, k) => {
      const kind = kinds[k] as (typeof kinds)[number];
      load = { ...load, [kind]: load[kind] + (row.at(-1) as number) / (row[k] as number) };
    });
  }
  expect(Math.max(...forces(load).map(Math.abs))).toBeLessThan(1e-6);
  return load;
}

// The spherical one leaves the neighbourhood of ride height before its links are free.
const corners = readElasticCorners().filter(({ name }) => name !== "rear_trailing_arm_spherical");

describe.each(corners)("every link of $name loose at once", ({ corner }) => {
  const freed = loadThatFreesLinks(corner);
  const random = makeRandom(23);

  it.each([1e-3, 4e-3])("has the balances that many other starts find, %d m of play", (total) => {
    const solver = new ComplianceSolver({ ...corner, faults: allLoose(corner, total) });
    for (let trial = 0; trial < 2; trial++) {
      const load = { ...freed, lateral: freed.lateral + 20 * trial, braking: freed.braking - 15 * trial };
      const all = balancesOf(solver, load);
      const [first] = all as [Balance];
      for (const branch of allBranches(solver.balance.playTerms.length))
        for (let start = 0; start < 3; start++) {
          const pose = clonePose(first.pose);
          advancePose(
            pose,
            Float64Array.from({ length: 6 }, (_, i) => (i < 3 ? 0.012 : 0.03) * (random() - 0.5)),
          );
          const one = solver.balance.solveFrom(pose, load, first.wheelLoad, branch);
          if (one.report.end !== "converged" || !isConsistent(solver.balance, one)) continue;
          if (isStride(first.pose, one.pose, 2)) expect(isIn(all, one), branch.join()).toBe(true);
        }
      expect(all.length).toBeGreaterThan(trial === 0 ? 8 : 0);
      // Play grown from nothing brings and takes balances in pairs of either sign.
      expect(all.reduce((sum, { sign }) => sum + sign, 0)).toBe(1);
    }
  });

  it("each differs from every other and names its sides", () => {
    const all = balancesOf(new ComplianceSolver({ ...corner, faults: allLoose(corner, 1e-3) }), freed);
    expect(new Set(all.map(({ branch }) => branch.join())).size).toBe(all.length);
    all.forEach((one, i) => {
      expect(isIn(all.slice(i + 1), one)).toBe(false);
    });
  });
});

describe("links that all hold nothing", () => {
  const five = readElasticCorners().find(({ name }) => name === "rear_five_link")?.corner;
  if (!five) throw new Error("no five-link");
  const upright = (tilt: number): ElasticCorner => {
    const { wheel } = five.geometry;
    // The patch of a wheel without camber and toe stands straight under its centre, and so does this spring.
    const [x, y, z] = wheel.centre;
    return {
      ...five,
      geometry: {
        ...five.geometry,
        wheel: { ...wheel, camber: 0 as typeof wheel.camber, toe: 0 as typeof wheel.toe },
        spring: { seat: { on: "knuckle", moving: [x, y, z - 0.02] }, body: [x + tilt, y, z + 0.4] },
      } as ElasticCorner["geometry"],
      faults: allLoose(five, 1e-3),
    };
  };

  it("leave the wheel free to turn about its spring: endless balances are not told as one", () => {
    const answer = new ComplianceSolver(upright(0)).solve(NO_LOAD);
    expect(answer).toMatchObject({ freeMoves: 1 });
    expect("state" in answer).toBe(false);
  });

  it("with a spring that leans have balances that can be counted", () => {
    const all = balancesOf(new ComplianceSolver(upright(0.05)), NO_LOAD);
    expect(all.length % 2).toBe(1);
  });
});
