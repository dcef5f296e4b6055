import {
  ComplianceSolver,
  type CornerLoad,
  type ElasticFault,
  type ElasticState,
  FaultBand,
  type StateBand,
} from "#engines/linkage";
import {
  add,
  addJets,
  dot,
  type Jet,
  norm,
  rotate,
  scale,
  scaleJet,
  subtract,
  unitVector,
  type Vector,
} from "#numeric";
import type { CornerModel } from "./corner-model.ts";
import type { RepairState, SolvedState } from "./fault-states.ts";

/** Rounds after which the direction of the force no longer moves; far more than it takes. */
const ROUNDS = 30;
/** The direction has settled when it turns by less than this, radians. */
const SETTLED = 1e-10;

/**
 * A loose ball joint at the common end of an arm's legs. The ball stands in its socket against the force it passes on,
 * half the play away from the middle, in one direction for all legs: each leg's free length is longer by that way along
 * it. The direction is found together with the balance; its own derivatives are left out of the band.
 */
export class LooseBallState implements RepairState {
  private readonly healthy: FaultBand;
  private at: { readonly load: CornerLoad; readonly way: Vector; readonly band: FaultBand } | null = null;

  constructor(
    private readonly model: CornerModel,
    private readonly legs: readonly string[],
    private readonly play: number,
  ) {
    this.healthy = this.bandWith([]);
  }

  get band(): FaultBand {
    return this.at?.band ?? this.healthy;
  }

  get carries(): boolean {
    return this.healthy.solver.carries;
  }

  solve(load: CornerLoad): SolvedState<ElasticState> | null {
    const sound = this.healthy.solver.solve(load);
    if (!("state" in sound)) return null;
    let state = sound.state;
    let way = this.wayOf(state, load);
    for (let round = 0; round < ROUNDS; round++) {
      const answer = this.solverWith(this.shiftsAlong(way, state, load)).solve(load);
      if (!("state" in answer)) return null;
      state = answer.state;
      const next = this.wayOf(state, load);
      const turned = norm(subtract(next, way));
      way = next;
      if (turned < SETTLED) break;
    }
    this.at = { load, way, band: this.bandWith(this.shiftsAlong(way, state, load)) };
    const { band } = this.at;
    const answer = band.solver.solve(load);
    if (!("state" in answer)) return null;
    return {
      state: answer.state,
      others: answer.others,
      band: () => band.bandAt(answer.state, load),
      reserves: () => this.reservesAt(answer.state, load),
    };
  }

  bandAt(load: CornerLoad): StateBand | null {
    const answer = this.solve(load);
    return answer ? this.band.bandAt(answer.state, load) : null;
  }

  /** The force the ball passes on: where it may vanish, the ball may stand anywhere in its socket. */
  private reservesAt(state: ElasticState, load: CornerLoad): readonly Jet[] {
    const way = this.wayOf(state, load);
    const along = this.legs.flatMap((leg, i) => {
      const force = this.band.linkForce(state, load, leg);
      return force ? [scaleJet(force, dot(way, this.directions(state, load)[i] as Vector))] : [];
    });
    return along.length === 0 ? [] : [along.reduce(addJets)];
  }

  sidesAt(load: CornerLoad): readonly StateBand[] {
    const answer = this.solve(load);
    if (!answer || !this.at) return [];
    const { way } = this.at;
    return [way, scale(way, -1)].flatMap((side) => {
      const band = this.bandWith(this.shiftsAlong(side, answer.state, load));
      const held = band.solver.solve(load);
      return "state" in held ? (band.bandAt(held.state, load) ?? []) : [];
    });
  }

  forget(): void {
    this.at = null;
  }

  /** Directions of the legs from body to ball as they stand. */
  private directions({ pose }: ElasticState, load: CornerLoad): readonly Vector[] {
    const { centre } = this.model.geometry.wheel;
    return this.legs.flatMap((leg) => {
      const link = this.model.geometry.links.find(({ name }) => name === leg);
      if (!link) return [];
      const moved: Vector = [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number];
      const ball = add(add(centre, moved), rotate(pose.r, subtract(link.outer, centre)));
      const inner = link.steered ? add(link.inner, [0, load.rack, 0]) : link.inner;
      return [unitVector(subtract(ball, inner))];
    });
  }

  /** The way the knuckle's side of the joint moves out of the middle: against the pull of the legs on it. */
  private wayOf(state: ElasticState, load: CornerLoad): Vector {
    const pull = this.directions(state, load).reduce<Vector>(
      (sum, u, i) => add(sum, scale(u, state.linkForces[this.legs[i] as string] ?? 0)),
      [0, 0, 0],
    );
    const size = norm(pull);
    return size === 0 ? [0, 0, 0] : scale(pull, 1 / size);
  }

  private shiftsAlong(way: Vector, state: ElasticState, load: CornerLoad): readonly ElasticFault[] {
    const directions = this.directions(state, load);
    return this.legs.map((link, i) => ({
      kind: "shift",
      link,
      by: (this.play / 2) * dot(way, directions[i] as Vector),
    }));
  }

  private corner(faults: readonly ElasticFault[]) {
    const { geometry, elasticity } = this.model;
    return { geometry, elasticity, hold: "contact-height" as const, faults: [...faults] };
  }

  private solverWith(faults: readonly ElasticFault[]): ComplianceSolver {
    return new ComplianceSolver(this.corner(faults));
  }

  private bandWith(faults: readonly ElasticFault[]): FaultBand {
    const { deviations, rates, correlations } = this.model;
    return new FaultBand(this.corner(faults), deviations, rates, correlations);
  }
}
