import type { Metres, Newtons, NewtonsPerMetre, Radians } from "#quantity";
import type { CornerGeometry } from "../geometry.ts";
import type { AntiRollBar } from "./car-pose.ts";

/** What carries one axle of a car, both sides alike; the left corner with its spring. */
export interface LoadedAxle {
  readonly geometry: CornerGeometry;
  readonly springRate: NewtonsPerMetre;
  /** Standing load of one wheel, all included. */
  readonly wheelLoad: Newtons;
  /** Moves with one wheel, kg, counted at its centre; contained in the wheel load. */
  readonly unsprungMass: number;
  /** Vertical rate of one tyre; infinite: a rigid disc. */
  readonly tyreRate: NewtonsPerMetre;
  readonly bar: AntiRollBar | null;
  /** Shares of the car's braking force and of its driving force this axle gives, both sides alike; those of both axles sum to 1. */
  readonly brakeShare?: number;
  readonly driveShare?: number;
}

export interface LoadedCar {
  readonly front: LoadedAxle;
  readonly rear: LoadedAxle;
  /** Centre of mass of the whole car over the ground. */
  readonly massHeight: Metres;
  /** m/s2 */
  readonly gravity: number;
}

/** One wheel of the balanced car; forces from the ground on its own side, angles against the ground. */
export interface BalancedWheel {
  readonly load: Newtons;
  /** Toward the left. */
  readonly lateral: Newtons;
  /** Rearward at the lowest point, by the brake, wheel locked to its knuckle. */
  readonly braking: Newtons;
  /** Forward at the wheel centre, by a shaft from the body. */
  readonly drive: Newtons;
  /** Against the body, bump positive. */
  readonly travel: Metres;
  readonly spring: Newtons;
  readonly camber: Radians;
  readonly toe: Radians;
}

export const wheelPlaces = ["frontLeft", "frontRight", "rearLeft", "rearRight"] as const;
export type WheelPlace = (typeof wheelPlaces)[number];

/** A car in a steady bend, braked or driven; lengths from where it stands. */
export interface CarBalanceState extends Readonly<Record<WheelPlace, BalancedWheel>> {
  readonly heave: Metres;
  readonly roll: Radians;
  readonly pitch: Radians;
  /** Load that went from the left to the right wheel of an axle. */
  readonly moved: { readonly front: Newtons; readonly rear: Newtons };
  /** Load that went from the rear axle to the front one. */
  readonly movedForward: Newtons;
}

/** Where a search for a balance begins: a state, or what one is reckoned to be. */
export interface CarBalanceStart
  extends Pick<CarBalanceState, "heave" | "roll" | "pitch">,
    Readonly<Record<WheelPlace, Pick<BalancedWheel, "travel" | "load">>> {}

/** How the mass of the car is accelerated, m/s2. */
export interface CarAcceleration {
  /** Toward the left, as in a steady bend to the left. */
  readonly lateral: number;
  /** Forward; negative: the car brakes. */
  readonly forward: number;
}

/** How the search ended where there is no balance with four wheels on the ground. */
export type CarBalanceAnswer =
  | { readonly state: CarBalanceState }
  | { readonly lifts: WheelPlace }
  | { readonly unsolved: "beyond-fold" | "no-equilibrium" };
