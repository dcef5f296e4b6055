import type { Vector } from "#numeric";
import type { Metres } from "#quantity";
import type { CornerGeometry } from "../geometry.ts";
import { TravelSweep } from "../solve-travel.ts";

/** One left wheel at a travel, in the axes of the body. */
export interface WheelPosture {
  readonly centre: Vector;
  /** Of its spin, toward the left. */
  readonly axis: Vector;
  /** Ways of the centre and turn of the knuckle, per travel. */
  readonly way: Vector;
  readonly turn: Vector;
  readonly springLength: Metres;
  /** Change of the spring's length per travel. */
  readonly springBy: number;
}

/** Postures of one wheel by its travel; null where the linkage does not reach it, or has no spring. */
export type WheelOverTravel = (travel: Metres) => WheelPosture | null;

/** The linkage itself, solved at every travel asked for. */
export function solvedWheel(geometry: CornerGeometry): WheelOverTravel {
  const sweep = new TravelSweep(geometry);
  return (travel) => {
    const p = sweep.solve({ travel, rack: 0 });
    if ("foldAt" in p || p.springRatio === null || p.springLength === null) return null;
    return {
      centre: p.attitude.centre,
      axis: p.attitude.axis,
      way: p.screw.v,
      turn: p.screw.w,
      springLength: p.springLength,
      springBy: -p.springRatio,
    };
  };
}

/** Half the travel that is followed by polynomials: a wheel rarely goes further. */
const REACH = 0.09;
const NODES = 12;
/** Where a polynomial of the degree is closest everywhere, and the weight of its barycentric form. */
interface ChebyshevNode {
  readonly at: Metres;
  readonly weight: number;
}
const nodes = Array.from({ length: NODES }, (_, k): ChebyshevNode => {
  const angle = ((2 * k + 1) * Math.PI) / (2 * NODES);
  return { at: REACH * Math.cos(angle), weight: (k % 2 === 0 ? 1 : -1) * Math.sin(angle) };
});
const SIZE = 14;

const valuesOf = ({ centre, axis, way, turn, springLength, springBy }: WheelPosture): readonly number[] => [
  ...centre,
  ...axis,
  ...way,
  ...turn,
  springLength,
  springBy,
];

/**
 * The same wheel by polynomials through a dozen solved postures: many times faster. Loads of a car so balanced are
 * within 1e-6 of the solved one (test). Beyond 90 mm each way, and where the linkage does not reach all of them, it is solved.
 */
export function interpolatedWheel(geometry: CornerGeometry): WheelOverTravel {
  const solved = solvedWheel(geometry);
  const table = new Float64Array(NODES * SIZE);
  for (let k = 0; k < NODES; k++) {
    const posture = solved((nodes[k] as ChebyshevNode).at);
    if (posture === null) return solved;
    table.set(valuesOf(posture), k * SIZE);
  }
  const sum = new Float64Array(SIZE);
  return (travel) => {
    if (!(Math.abs(travel) <= REACH)) return solved(travel);
    sum.fill(0);
    let all = 0;
    for (let k = 0; k < NODES; k++) {
      const { at, weight } = nodes[k] as ChebyshevNode;
      if (at === travel) return solved(travel);
      const share = weight / (travel - at);
      all += share;
      const row = k * SIZE;
      for (let i = 0; i < SIZE; i++) sum[i] = (sum[i] as number) + share * (table[row + i] as number);
    }
    const at = (i: number): number => (sum[i] as number) / all;
    const three = (i: number): Vector => [at(i), at(i + 1), at(i + 2)];
    return {
      centre: three(0),
      axis: three(3),
      way: three(6),
      turn: three(9),
      springLength: at(12),
      springBy: at(13),
    };
  };
}
