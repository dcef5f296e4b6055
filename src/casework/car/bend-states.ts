import type { CarAcceleration, CarBalance, CarBalanceAnswer, CarBalanceState } from "#engines/linkage";
import { normalFrom, seededRandom } from "#numeric";
import type { Family } from "#vehicle";
import { balanceOf, drawBalance, type Models } from "./loaded-car.ts";

const SEED = 20_261_129;
/** Cars that are drawn: a standard deviation from so many is known to a tenth. */
const DRAWS = 50;

/** One car of a line as it may be, with where it stood last: its next bend is sought from there. */
interface DrawnCar {
  readonly balance: CarBalance;
  last: CarBalanceState | null;
}

/** The balances of a car line in bends: as it is on file, and as it may be. */
export class BendStates {
  private readonly nominal: CarBalance;
  private drawn: readonly DrawnCar[] | null = null;

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

  /** The car on file. */
  solve(acceleration: CarAcceleration, near: CarBalanceState | null = null): CarBalanceAnswer {
    const answer = this.nominal.solve(acceleration, near);
    return "state" in answer || near === null ? answer : this.nominal.solve(acceleration);
  }

  /** Every car that may be and stands on four wheels there, by sampling with a fixed seed. */
  sample(acceleration: CarAcceleration): readonly CarBalanceState[] {
    this.drawn ??= this.draw();
    return this.drawn.flatMap((car) => {
      const near = car.last && car.balance.solve(acceleration, car.last);
      const answer = near && "state" in near ? near : car.balance.solve(acceleration);
      if (!("state" in answer)) return [];
      car.last = answer.state;
      return [answer.state];
    });
  }

  private draw(): readonly DrawnCar[] {
    const draw = normalFrom(seededRandom(SEED));
    return Array.from({ length: DRAWS }, () => drawBalance(this.family, this.models, draw))
      .filter(({ carries }) => carries)
      .map((balance) => ({ balance, last: null }));
  }
}

let latest: { readonly family: string; readonly states: BendStates } | null = null;

/** The states of a car line, kept while the same one is asked for: a slider asks many times. */
export function bendStatesOf(family: Family, models: Models): BendStates {
  const written = JSON.stringify(family);
  if (latest?.family !== written) latest = { family: written, states: new BendStates(family, models) };
  return latest.states;
}
