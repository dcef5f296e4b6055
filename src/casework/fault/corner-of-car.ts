import {
  type BranchEnd,
  type Drive,
  LayoutSweep,
  type TravelAnswer,
  TravelBand,
  type TravelStep,
  TravelSweep,
} from "#engines/linkage";
import { axleAndSide, type Corner, type Family, isOfBodies, type Position } from "#vehicle";
import { BodiesState, modelBodies, playInBodies, softInBodies } from "./bodies-state.ts";
import { type CornerKnown, engineName, linksAt, modelCorner, playFaults, softFaults } from "./corner-model.ts";
import { CornerState, type RepairState } from "./fault-states.ts";
import { LooseBallState } from "./loose-ball.ts";

/** A corner of a car line that can be asked in any state of repair, whatever its linkage is made of. */
export interface CornerOfCar extends CornerKnown {
  readonly sound: () => RepairState;
  /** With all rates at these positions times a factor. */
  readonly softAt: (positions: readonly Position[], factor: number) => RepairState;
  /** With play at a position, metres from side to side. */
  readonly looseAt: (position: Position, play: number) => RepairState;
  /** Its linkage without rubber, driven so. */
  readonly rigid: (drive: Drive) => RigidCorner;
  /** Figures of its linkage without rubber with their bands; null of several bodies, where they are not computed. */
  readonly rigidBand: () => TravelBand | null;
}

/** A linkage without rubber over travel and rack, and where it locks. */
export interface RigidCorner {
  solve(step: TravelStep): TravelAnswer;
  findEnds(reach: number): { readonly low: BranchEnd | null; readonly high: BranchEnd | null };
}

/** A corner with one knuckle, or one of several bodies; it computes as a left one. */
export function cornerOfCar(family: Family, corner: Corner): CornerOfCar {
  return isOfBodies(family[axleAndSide(corner).axle]) ? ofBodies(family, corner) : ofOneKnuckle(family, corner);
}

function ofOneKnuckle(family: Family, corner: Corner): CornerOfCar {
  const model = modelCorner(family, corner);
  const { assembly, mirrored } = model;
  return {
    assembly,
    mirrored,
    sound: () => new CornerState(model, []),
    softAt: (positions, factor) => {
      const faults = positions.flatMap((position) => softFaults(assembly, position, factor));
      return new CornerState(model, [...new Map(faults.map((fault) => [JSON.stringify(fault), fault])).values()]);
    },
    looseAt: (position, play) => {
      const legs = linksAt(assembly, position).map(engineName);
      return legs.length > 1
        ? new LooseBallState(model, legs, play)
        : new CornerState(model, playFaults(assembly, position, play));
    },
    rigid: (drive) => new TravelSweep(model.geometry, drive),
    rigidBand: () => new TravelBand(model.geometry, model.deviations, model.correlations),
  };
}

function ofBodies(family: Family, corner: Corner): CornerOfCar {
  const model = modelBodies(family, corner);
  const { assembly, mirrored } = model;
  return {
    assembly,
    mirrored,
    sound: () => new BodiesState(model, []),
    softAt: (positions, factor) =>
      new BodiesState(
        model,
        positions.flatMap((position) => softInBodies(assembly, position, factor)),
      ),
    looseAt: (position, play) => new BodiesState(model, playInBodies(position, play)),
    rigid: (drive) => new LayoutSweep(model.linkage.layout, drive),
    rigidBand: () => null,
  };
}
