import type {
  CarAcceleration,
  CarBalance,
  CarBalanceAnswer,
  CarBalanceStart,
  CarBalanceState,
  LoadedCar,
  WheelPlace,
} from "#engines/linkage";
import { normalFrom, seededRandom } from "#numeric";
import type { Family } from "#vehicle";
import { carMotionForm } from "./car-motions.ts";
import { balanceOf, drawBalance, type Models } from "./loaded-car.ts";
import { mirroredPlace, mirrorState } from "./mirror-state.ts";

const SEED = 20_261_129;
/** Cars that are drawn: a standard deviation from so many is known to a tenth. */
const DRAWS = 50;
/** Bends on one side that the curves go through. */
const STEPS = 4;
/** Halvings to where a wheel lifts: to a thousandth of a step. */
const HALVINGS = 10;

/** One bend of the curves: the car on file, and the cars that may be and stand on four wheels there. */
export interface BendStep {
  /** Sideways, m/s2, a bend to the left positive. */
  readonly by: number;
  readonly state: CarBalanceState;
  readonly drawn: readonly CarBalanceState[];
  /** The same by car, null where it does not stand there. */
  readonly cars: Drawn["cars"];
}

/** Where the car on file stands in a bend, and each drawn car; null where it does not stand on four wheels. */
interface Drawn {
  readonly state: CarBalanceState;
  readonly cars: readonly (CarBalanceState | null)[];
}

const standing = (cars: Drawn["cars"]): readonly CarBalanceState[] => cars.filter((car) => car !== null);

/** A car that stands as told, moved by as much as another one moves from one state to the next. */
function movedAlong(own: CarBalanceState, from: CarBalanceState, to: CarBalanceState): CarBalanceStart {
  const wheel = (place: WheelPlace): CarBalanceStart[WheelPlace] => ({
    travel: own[place].travel + to[place].travel - from[place].travel,
    load: own[place].load + to[place].load - from[place].load,
  });
  return {
    heave: own.heave + to.heave - from.heave,
    roll: own.roll + to.roll - from.roll,
    pitch: own.pitch + to.pitch - from.pitch,
    frontLeft: wheel("frontLeft"),
    frontRight: wheel("frontRight"),
    rearLeft: wheel("rearLeft"),
    rearRight: wheel("rearRight"),
  };
}

/** Where the car on file takes no sharper bend; null: which wheel lifts is not known. */
export interface BendEnd {
  readonly way: 1 | -1;
  readonly by: number;
  readonly lifts: WheelPlace | null;
}

/** A car line over every bend at one braking or drive. */
export interface BendOver {
  readonly steps: readonly BendStep[];
  readonly ends: readonly BendEnd[];
}

/** The balances of a car line in bends: as it is on file, and as it may be. */
export class BendStates {
  private readonly nominal: CarBalance;
  private drawn: readonly CarBalance[] | null = null;
  private rest: Drawn | null = null;
  private latestOver: { readonly along: number; readonly over: BendOver } | null = null;

  constructor(
    private readonly family: Family,
    private readonly models: Models,
  ) {
    this.nominal = balanceOf(family, models);
  }

  /** False where a spring cannot carry its wheel. */
  get carries(): boolean {
    return this.nominal.carries;
  }

  /** The car on file, and the cars that may be. */
  get cars(): { readonly nominal: LoadedCar; readonly drawn: readonly LoadedCar[] } {
    this.drawn ??= this.draw();
    return { nominal: this.nominal.car, drawn: this.drawn.map(({ car }) => car) };
  }

  /** The car on file. */
  solve(acceleration: CarAcceleration, near: CarBalanceState | null = null): CarBalanceAnswer {
    const answer = this.nominal.solve(acceleration, near);
    return "state" in answer || near === null ? answer : this.nominal.solve(acceleration);
  }

  /** Every car that may be and stands on four wheels there, by sampling with a fixed seed. */
  sample(acceleration: CarAcceleration, state: CarBalanceState): readonly CarBalanceState[] {
    const { steps } = this.over(acceleration.forward);
    const nearest = steps.reduce<BendStep | null>(
      (best, one) =>
        best === null || Math.abs(one.by - acceleration.lateral) < Math.abs(best.by - acceleration.lateral)
          ? one
          : best,
      null,
    );
    return standing(this.drawNear(acceleration, state, nearest ?? this.atRest()));
  }

  /** The drawn cars, each sought from where it stands in a bend nearby, moved by as much as the one on file has moved since. */
  private drawNear(acceleration: CarAcceleration, state: CarBalanceState, near: Drawn | null): Drawn["cars"] {
    this.drawn ??= this.draw();
    return this.drawn.map((balance, i) => {
      const own = near?.cars[i];
      const close = balance.solve(acceleration, near && own ? movedAlong(own, near.state, state) : state);
      const answer = "state" in close ? close : balance.solve(acceleration);
      return "state" in answer ? answer.state : null;
    });
  }

  /** Where all stand still: the start of every other search, the same whatever was asked before. */
  private atRest(): Drawn | null {
    if (this.rest === null) {
      const still = { lateral: 0, forward: 0 };
      const answer = this.solve(still);
      if ("state" in answer) this.rest = { state: answer.state, cars: this.drawNear(still, answer.state, null) };
    }
    return this.rest;
  }

  /** All bends from one side to the other at one acceleration along the car; kept while it is asked for again. */
  over(along: number): BendOver {
    if (this.latestOver?.along !== along) this.latestOver = { along, over: this.follow(along) };
    return this.latestOver.over;
  }

  /** Bends to the left, begun where the one before ended; those to the right are their mirror images. */
  private follow(along: number): BendOver {
    const form = carMotionForm("bend");
    const most = form.read(form.most(this.family));
    const steps: BendStep[] = [];
    const step = (by: number, state: CarBalanceState): BendStep => {
      const cars = this.drawNear({ lateral: by, forward: along }, state, steps.at(-1) ?? this.atRest());
      return { by, state, drawn: standing(cars), cars };
    };
    let end: { by: number; lifts: WheelPlace | null } | null = null;
    for (let i = 0; i <= STEPS && end === null; i++) {
      const by = (i * most) / STEPS;
      const last = steps.at(-1);
      const answer = this.solve({ lateral: by, forward: along }, last?.state);
      if ("state" in answer) steps.push(step(by, answer.state));
      else if (last === undefined) return { steps: [], ends: [] };
      else {
        const found = this.findEnd(last, by, along);
        end = { by: found.by, lifts: found.lifts };
        if (found.by > last.by) steps.push(step(found.by, found.state));
      }
    }
    const left = steps.slice(1);
    return {
      steps: [...left.map(mirrorStep).toReversed(), ...steps],
      ends:
        end === null
          ? []
          : [
              { way: 1, ...end },
              { way: -1, by: -end.by, lifts: end.lifts && mirroredPlace[end.lifts] },
            ],
    };
  }

  /** Between a bend it takes and one it does not: the sharpest it takes, and the wheel that lifts beyond it. */
  private findEnd(last: BendStep, beyond: number, along: number) {
    let [by, state, not, lifts]: [number, CarBalanceState, number, WheelPlace | null] = [
      last.by,
      last.state,
      beyond,
      null,
    ];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (by + not) / 2;
      const answer = this.solve({ lateral: middle, forward: along }, state);
      if ("state" in answer) [by, state] = [middle, answer.state];
      else {
        not = middle;
        if ("lifts" in answer) lifts = answer.lifts;
      }
    }
    return { by, state, lifts };
  }

  private draw(): readonly CarBalance[] {
    const draw = normalFrom(seededRandom(SEED));
    return Array.from({ length: DRAWS }, () => drawBalance(this.family, this.models, draw)).filter(
      ({ carries }) => carries,
    );
  }
}

function mirrorStep({ by, state, cars }: BendStep): BendStep {
  const mirrored = cars.map((car) => car && mirrorState(car));
  return { by: -by, state: mirrorState(state), drawn: standing(mirrored), cars: mirrored };
}

let latest: { readonly family: string; readonly states: BendStates } | null = null;

/** The states of a car line, kept while the same one is asked for: a slider asks many times. */
export function bendStatesOf(family: Family, models: Models): BendStates {
  const written = JSON.stringify(family);
  if (latest?.family !== written) latest = { family: written, states: new BendStates(family, models) };
  return latest.states;
}
