import { computeSteeredAxle, placeWheel, TravelSweep } from "#engines/linkage";
import type { Metres, Radians } from "#quantity";
import type { Family } from "#vehicle";
import type { CornerModel } from "../fault/corner-model.ts";
import { type BendStates, bendStatesOf } from "./bend-states.ts";
import type { Models } from "./loaded-car.ts";

type Geometry = CornerModel["geometry"];

/** Both front wheels with the rack moved, the car standing. */
export interface RackReading {
  readonly inner: Radians;
  readonly outer: Radians;
  readonly correctOuter: Radians;
  /** Outer less correct. */
  readonly error: Radians;
  /** Against the ground, from standing. */
  readonly camber: { readonly frontLeft: Radians; readonly frontRight: Radians };
}

const STANDING = { heave: 0, roll: 0, pitch: 0, about: [0, 0, 0] } as const;

/** One front axle with its rack moved; null where it is not steered or a wheel does not follow. */
export function readRack(geometry: Geometry, wheelbase: Metres, rack: Metres): RackReading | null {
  const sweep = new TravelSweep(geometry);
  const at = sweep.solve({ travel: 0, rack: 0 });
  const axis = "foldAt" in at ? null : (at.steering?.springHeld ?? at.steering?.heightHeld);
  if (!axis) return null;
  const steered = computeSteeredAxle(geometry, rack, { pivots: 2 * axis.ground[1], wheelbase });
  const [left, right, rest] = [
    placeWheel(geometry, "left", STANDING, rack, sweep),
    placeWheel(geometry, "right", STANDING, rack, sweep),
    placeWheel(geometry, "left", STANDING, 0, sweep),
  ];
  if (!steered || !left || !right || !rest) return null;
  const { inner, outer, correctOuter, error } = steered;
  return {
    inner,
    outer,
    correctOuter,
    error,
    camber: { frontLeft: left.camber - rest.camber, frontRight: right.camber - rest.camber },
  };
}

/** The front axles that may be, each with its rack moved. */
export class RackSpread {
  private latestOver: { readonly key: string; readonly over: readonly (readonly RackReading[])[] } | null = null;

  constructor(
    private readonly wheelbase: Metres,
    private readonly states: BendStates,
  ) {}

  at(rack: Metres): readonly RackReading[] {
    return this.states.cars.drawn.flatMap(({ front }) => {
      const read = readRack(front.geometry, this.wheelbase, rack);
      return read === null ? [] : [read];
    });
  }

  /** For each of amounts that lie alike on either side of nought; those to the right are mirror images of those to the left. */
  over(amounts: readonly Metres[]): readonly (readonly RackReading[])[] {
    const key = amounts.join();
    if (this.latestOver?.key !== key) {
      const left = new Map(amounts.filter((a) => a >= 0).map((a) => [a, this.at(a)]));
      const over = amounts.map((a) => (a >= 0 ? left.get(a) : left.get(-a)?.map(mirrorReading)) ?? this.at(a));
      this.latestOver = { key, over };
    }
    return this.latestOver.over;
  }
}

const mirrorReading = (read: RackReading): RackReading => ({
  ...read,
  camber: { frontLeft: read.camber.frontRight, frontRight: read.camber.frontLeft },
});

let latest: { readonly states: BendStates; readonly spread: RackSpread } | null = null;

/** The front axles of a car line as they may be, kept while the same line is asked for. */
export function rackSpreadOf(family: Family, models: Models): RackSpread {
  const states = bendStatesOf(family, models);
  if (latest?.states !== states) latest = { states, spread: new RackSpread(family.wheelbase, states) };
  return latest.spread;
}
