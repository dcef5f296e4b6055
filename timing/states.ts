import {
  ComplianceSolver,
  type ElasticCorner,
  type ElasticState,
  FaultBand,
  NO_LOAD,
  type PointDeviation,
  TravelBand,
} from "#engines/linkage";
import { readElasticCorners } from "../test/fuzz/reference-corners.ts";
import { medianMilliseconds } from "./measure.ts";

/** Positions of each state, and how many there were of each. */
export interface StatesTime {
  readonly milliseconds: number;
  readonly positions: number;
}

const TOLERANCE: PointDeviation = [0.005, 0.005, 0.001];
const HEIGHTS = Array.from({ length: 60 }, (_, i) => (-60 + 2 * i) / 1000);
const BRAKING = 2500;
/** Calls until the compiled code is what it stays: a page asks many times. */
const SETTLING = 8;

/** Sound, torn, firmer, lowered: what the Geometry page draws at once. */
function fourStates(corner: ElasticCorner): readonly { readonly corner: ElasticCorner; readonly lower: number }[] {
  const { link, end } = corner.elasticity.rubber[0] ?? { link: "", end: "inner" };
  const held: ElasticCorner = { ...corner, hold: "contact-height" };
  const soft = (factor: number): ElasticCorner => ({ ...held, faults: [{ kind: "soft", link, end, factor }] });
  return [
    { corner: held, lower: 0 },
    { corner: soft(0.25), lower: 0 },
    { corner: soft(1.8), lower: 0 },
    { corner: held, lower: 0.02 },
  ];
}

/**
 * 4 states x 60 heights of the invented rear five-link: every figure of the rigid linkage with its band, and the balance
 * under a braking force with the bands of toe, camber and wheel centre.
 */
export function timeStates(rounds: number): StatesTime {
  const elastic = readElasticCorners().find(({ name }) => name === "rear_five_link");
  if (!elastic) throw new Error("the reference has no elastic rear five-link");
  const { geometry, elasticity } = elastic.corner;
  const rates = elasticity.rubber.map((r) => ({ name: `${r.link}.${r.end}`, sd: 0.2 }));
  const deviations = (names: readonly string[]): readonly PointDeviation[] => names.map(() => TOLERANCE);
  let positions = 0;
  const call = (): void => {
    positions = 0;
    const rigid = new TravelBand(geometry, deviations);
    // Sound, torn and firmer have one rigid linkage: its figures and bands are computed once a height.
    const figures = new Map<number, ReturnType<TravelBand["solve"]>>();
    const figuresAt = (travel: number): ReturnType<TravelBand["solve"]> => {
      const known = figures.get(travel) ?? rigid.solve(travel);
      figures.set(travel, known);
      return known;
    };
    for (const { corner, lower } of fourStates(elastic.corner)) {
      const band = new FaultBand(corner, deviations, rates);
      let near: ElasticState | null = null;
      for (const height of HEIGHTS) {
        const travel = height + lower;
        const load = { ...NO_LOAD, braking: BRAKING, contactRise: travel };
        const answer = band.solver.solve(load, near);
        if (!("state" in answer)) throw new Error("no balance");
        near = answer.state;
        const spread = band.bandAt(near, load);
        if (!spread || "foldAt" in figuresAt(travel)) throw new Error("a position was not reached");
        positions++;
      }
    }
  };
  return { milliseconds: medianMilliseconds(rounds, call, SETTLING), positions };
}

/** One move of a slider on the Geometry page: one height in four states, milliseconds. */
export function timeOneMove(rounds: number): number {
  const elastic = readElasticCorners().find(({ name }) => name === "rear_five_link");
  if (!elastic) throw new Error("the reference has no elastic rear five-link");
  const solvers = fourStates(elastic.corner).map((s) => new ComplianceSolver(s.corner));
  let i = 0;
  return medianMilliseconds(rounds, () => {
    const rise = HEIGHTS[i++ % HEIGHTS.length] as number;
    for (const solver of solvers) solver.solve({ ...NO_LOAD, braking: BRAKING, contactRise: rise });
  });
}
