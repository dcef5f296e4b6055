import { add, cross, dot, factorise, makeFactorisation, solveFactorised, subtract, type Vector } from "#numeric";
import type { Metres } from "#quantity";
import type { ElasticCorner } from "../elastic-corner.ts";
import { buildElasticTerms } from "../elastic-terms.ts";
import type { LoadState } from "./load-state.ts";
import { placeOf } from "./moving-part.ts";

/** A push of a hand at a place of the wheel, newtons, and where and along what the movement is read. */
export interface HandPush {
  /** Force and moment on the knuckle, the moment about the wheel centre. */
  readonly force: Vector;
  readonly moment: Vector;
  readonly readAt: Vector;
  /** Unit vector. */
  readonly readAlong: Vector;
}

/**
 * How far the place read moves under a hand's push, from rubber and members about a state of the car: linear, the stop or
 * support that carries the wheel held rigidly, forces of the state left out of the stiffness (they are small beside it).
 * Metres; null where the joints leave a move free.
 */
export function computeHandMovement(corner: ElasticCorner, state: LoadState, push: HandPush): Metres | null {
  const terms = buildElasticTerms(corner).map((t) => ({ rate: t.rate, row: t.at(state.pose, 0).row }));
  const carrier = state.carrierRow;
  const rigid = [...terms.filter((t) => !Number.isFinite(t.rate)).map((t) => t.row), ...(carrier ? [carrier] : [])];
  const n = 6 + rigid.length;
  const f = makeFactorisation(n);
  f.lu.fill(0);
  for (const { rate, row } of terms) {
    if (!Number.isFinite(rate)) continue;
    for (let i = 0; i < 6; i++)
      for (let j = 0; j < 6; j++)
        f.lu[i * n + j] = (f.lu[i * n + j] as number) + rate * (row[i] as number) * (row[j] as number);
  }
  rigid.forEach((row, k) => {
    for (let i = 0; i < 6; i++) {
      f.lu[i * n + 6 + k] = row[i] as number;
      f.lu[(6 + k) * n + i] = row[i] as number;
    }
  });
  const b = new Float64Array(n);
  b.set([...push.force, ...push.moment]);
  if (!factorise(f) || f.pivotRatio < 1e-15) return null;
  solveFactorised(f, b);
  const at = (i: number): number => b[i] as number;
  const centre = placeOf(corner.geometry, state.pose, corner.geometry.wheel.centre);
  const moved = add([at(0), at(1), at(2)], cross([at(3), at(4), at(5)], subtract(push.readAt, centre)));
  return dot(moved, push.readAlong);
}

/**
 * How far the place read moves freely for a play along a link, everything else rigid: by virtual work the play times the
 * force that a unit push at that place and along that line brings into the link. Metres, 0 or more.
 */
export function computeFreeMovement(
  corner: ElasticCorner,
  state: LoadState,
  link: string,
  play: Metres,
  { readAt, readAlong }: Pick<HandPush, "readAt" | "readAlong">,
): Metres | null {
  const centre = placeOf(corner.geometry, state.pose, corner.geometry.wheel.centre);
  const pull = state.pullIn(link, readAlong, cross(subtract(readAt, centre), readAlong));
  return pull === null ? null : Math.abs(play * pull);
}
