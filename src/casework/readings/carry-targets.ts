import { type Jet, subtractJets } from "#numeric";
import type { AlignmentTarget, AxleName, Corner, Family, Side } from "#vehicle";
import { shownValue } from "../cases/reading-reasons.ts";
import { cornerOfCar } from "../fault/corner-of-car.ts";
import { loadOf } from "../fault/fault-states.ts";
import { findSettlingReading, isSignSure } from "../fault/settle.ts";

/** Nearer to the height of the targets than this the angles are taken as those of that height, m (common practice, no source). */
export const SAME_HEIGHT = 0.005;

/** Angles whose change with height the linkage gives. */
export const CARRIED = ["camber", "toe"] as const;
export type CarriedAngle = (typeof CARRIED)[number];

/** How far one angle of a wheel goes from the height of its target to the height it stands at. */
export type Carried =
  | { readonly kind: "carried"; readonly by: number; readonly sd: number }
  /**
   * Its sign is not sure, or the corner finds no balance there: what would settle it, in words, and how far it may go
   * either way as a standard deviation in radians.
   */
  | { readonly kind: "open"; readonly settle: string; readonly unsure: number };

/** What the linkage says of one wheel that stands at another height than its target. */
export interface CarriedWheel {
  readonly side: Side;
  readonly angles: Readonly<Record<CarriedAngle, Carried>>;
}

const NO_BALANCE = "The corner on file finds no balance there: its hard points want to be read again.";
const NO_FORCE = { contactRise: 0, rack: 0, braking: 0, lateral: 0, drive: 0 } as const;

/** How far camber and toe of a corner go when the wheel stands `rise` metres higher in its arch than the family's ride height. */
function carryCorner(family: Family, corner: Corner, rise: number): Readonly<Record<CarriedAngle, Carried>> {
  const model = cornerOfCar(family, corner);
  const state = model.sound();
  const load = loadOf(NO_FORCE, model.mirrored);
  const rest = state.carries ? state.bandAt(load) : null;
  const there = rest === null ? null : state.bandAt({ ...load, contactRise: rise });
  const carry = (angle: CarriedAngle): Carried => {
    if (rest === null || there === null) return { kind: "open", settle: NO_BALANCE, unsure: 0 };
    const change: Jet = subtractJets(there[angle], rest[angle]);
    const [by, sd] = [change[0] as number, state.band.jets.deviation(change)];
    return isSignSure(by, sd)
      ? { kind: "carried", by, sd }
      : {
          kind: "open",
          settle: findSettlingReading(state.band.jets, change, model.assembly),
          unsure: Math.hypot(by, sd),
        };
  };
  return { camber: carry("camber"), toe: carry("toe") };
}

/**
 * The wheels of an axle that stand at another height than the targets are set for, each with how far camber and toe go to
 * that height by the family's own linkage; the family's ride height is taken as the height of the targets.
 * @param heights hub centre to arch of each wheel that was read, metres
 */
export function carryTargets(
  family: Family,
  axle: AxleName,
  target: AlignmentTarget | null,
  heights: ReadonlyMap<Side, number>,
): readonly CarriedWheel[] {
  const set = target?.hubToArch ?? null;
  if (set === null) return [];
  return [...heights].flatMap(([side, height]) =>
    Math.abs(set - height) <= SAME_HEIGHT
      ? []
      : [{ side, angles: carryCorner(family, `${axle}-${side}`, set - height) }],
  );
}

/** A target with its angles as they are at the height this wheel stands at; those that are not carried stay. */
export function targetAtHeight(target: AlignmentTarget, wheel: CarriedWheel | undefined): AlignmentTarget {
  const moved = (angle: CarriedAngle): AlignmentTarget[CarriedAngle] => {
    const range = target[angle];
    const carried = wheel?.angles[angle];
    return range === null || carried?.kind !== "carried" ? range : [range[0] + carried.by, range[1] + carried.by];
  };
  return { ...target, camber: moved("camber"), toe: moved("toe") };
}

/** How unsure a limit is by the carrying alone, standard deviation in radians; where it is not carried, by what that leaves out. */
export const unsureByCarrying = (wheel: CarriedWheel | undefined, angle: CarriedAngle): number => {
  const carried = wheel?.angles[angle];
  return carried === undefined ? 0 : carried.kind === "carried" ? carried.sd : carried.unsure;
};

/** What carrying does to the total toe of an axle: by how much, and how unsure it then is; by nothing where a wheel is not carried. */
export function carryTotalToe(wheels: readonly CarriedWheel[]): { readonly by: number; readonly sd: number } {
  const toes = wheels.map(({ angles }) => angles.toe);
  const isOpen = toes.some(({ kind }) => kind === "open");
  const unsure = wheels.map((wheel) => unsureByCarrying(wheel, "toe")).reduce((sum, sd) => sum + sd, 0);
  const by = toes.reduce((sum, toe) => sum + (toe.kind === "carried" ? toe.by : 0), 0);
  return isOpen ? { by: 0, sd: unsure + Math.abs(by) } : { by, sd: unsure };
}

/** What was carried and by how much, and what was not and what would settle it: one sentence for each angle that has a target. */
export function carriedWords(target: AlignmentTarget, wheels: readonly CarriedWheel[]): string {
  const sentences = CARRIED.flatMap((angle) => {
    if (target[angle] === null) return [];
    const open = wheels.flatMap(({ angles }) => (angles[angle].kind === "open" ? [angles[angle].settle] : []));
    if (open[0] !== undefined)
      return [
        `${angle} is not carried to it: the sign of its change is not sure, so it counts as uncertainty. ${open[0]}`,
      ];
    const by = wheels.flatMap(({ side, angles }) => {
      const carried = angles[angle];
      return carried.kind === "carried"
        ? [`${side} by ${shownValue(angle, carried.by)} (±${shownValue(angle, 2 * carried.sd)})`]
        : [];
    });
    return [`${angle} is carried to it by the linkage on file, ${by.join(", ")}`];
  });
  return sentences.map((words) => `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/\.$/, "")}.`).join(" ");
}
