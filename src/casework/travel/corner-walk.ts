import type { TravelPosition, WheelBand } from "#engines/linkage";
import type { Corner, Family } from "#vehicle";
import { type CornerOfCar, cornerOfCar } from "../fault/corner-of-car.ts";
import { evenRises } from "../fault/even-rises.ts";
import { loadOf, type RepairState } from "../fault/fault-states.ts";
import type { Condition } from "../fault-effect.ts";

/** Lines never reach further than this from ride height, metres; they end earlier at the stops. */
const FURTHEST = 0.08;
/** A stop typed in whole millimetres and asked for in metres, metres. */
const STOP_ROUNDING = 1e-6;

/** A corner walked from ride height to both ends of its travel. */
export interface CornerWalk {
  readonly model: CornerOfCar;
  readonly state: RepairState;
  /** Contact rises from the height the walk counts from, metres, rising; 0 is one of them. */
  readonly points: readonly WalkPoint[];
  /** The balance at a rise between the stops; null beyond them or where there is none. */
  readonly solveAt: (rise: number) => WheelBand | null;
}

export interface WalkPoint {
  readonly rise: number;
  readonly band: WheelBand;
  /** Without rubber, at the same rise; null where the rigid linkage does not reach it. */
  readonly rigid: TravelPosition | null;
}

/**
 * Balances of a corner under a condition at every 10 mm and at its ends; each is started from the one before. A corner that
 * finds no balance on the way ends there. `lowered` (metres) is how much nearer the body stands to the ground than the
 * family's ride height: rises count from there. `stateOf`: what is different with its rubber.
 */
export function walkCorner(
  family: Family,
  corner: Corner,
  condition: Condition,
  lowered: number,
  stateOf: (model: CornerOfCar) => RepairState = (model) => model.sound(),
): CornerWalk {
  const model = cornerOfCar(family, corner);
  const state = stateOf(model);
  const { bumpStop, droopStop } = model.assembly;
  const top = Math.min(FURTHEST, bumpStop - lowered);
  const bottom = -Math.min(FURTHEST, droopStop + lowered);
  const load = loadOf(condition, model.mirrored);
  const sweep = model.rigid("contact-height");
  const walk = (rises: readonly number[]): WalkPoint[] => {
    state.forget();
    const points: WalkPoint[] = [];
    for (const rise of rises) {
      const band = state.carries ? state.bandAt({ ...load, contactRise: rise + lowered }) : null;
      if (!band) break;
      const rigid = sweep.solve({ travel: rise + lowered, rack: load.rack ?? 0 });
      points.push({ rise, band, rigid: "foldAt" in rigid ? null : rigid });
    }
    return points;
  };
  const up = walk(top > 0 ? [0, ...evenRises(top)] : [0]);
  const points = [...walk(evenRises(bottom)).reverse(), ...up];
  const solveAt = (rise: number): WheelBand | null => {
    if (rise + lowered > bumpStop + STOP_ROUNDING || rise + lowered < -droopStop - STOP_ROUNDING) return null;
    state.forget();
    const onTheWay = points.filter((p) => Math.sign(p.rise) === Math.sign(rise) && Math.abs(p.rise) < Math.abs(rise));
    for (const p of rise < 0 ? onTheWay.reverse() : onTheWay) state.solve({ ...load, contactRise: p.rise + lowered });
    return state.bandAt({ ...load, contactRise: rise + lowered });
  };
  return { model, state, points, solveAt };
}
