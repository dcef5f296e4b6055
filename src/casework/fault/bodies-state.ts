import {
  buildLayoutLinkage,
  type CornerLoad,
  computeLayoutDerivatives,
  computeLayoutReserves,
  LayoutBalance,
  type LayoutElasticity,
  type LayoutEquilibria,
  type LayoutFault,
  type LayoutLinkage,
  type LayoutParameter,
  type LayoutState,
  listLayoutParameters,
  type Parameter,
  solveLayout,
  UncertainNumbers,
  type WheelBand,
} from "#engines/linkage";
import type { Jet } from "#numeric";
import {
  assembleCorner,
  axleAndSide,
  type Corner,
  type CornerAssembly,
  type CornerBodies,
  type Family,
  type Position,
} from "#vehicle";
import { bodyPlaceAt, type CornerKnown, rateOf } from "./corner-model.ts";
import type { RepairState, SolvedState } from "./fault-states.ts";

/** One corner of several bodies as the linkage computes with it: always a left one. */
export interface BodiesModel extends CornerKnown {
  readonly linkage: LayoutLinkage;
  readonly elasticity: LayoutElasticity;
}

/** Builds the left-hand model of a corner of several bodies from its family. */
export function modelBodies(family: Family, corner: Corner): BodiesModel {
  const { axle, side } = axleAndSide(corner);
  const assembly = assembleCorner(family, `${axle}-left`);
  const { bodies } = assembly;
  if (!bodies) throw new Error(`the ${axle} axle of ${family.id} has one knuckle`);
  return {
    assembly,
    mirrored: side === "right",
    linkage: buildLayoutLinkage(bodies.layout),
    elasticity: elasticityOf(assembly, bodies),
  };
}

function elasticityOf({ spring, wheelLoad }: CornerAssembly, { places, members }: CornerBodies): LayoutElasticity {
  return {
    springRate: spring.rate,
    wheelLoad,
    members,
    rubber: places.flatMap(({ part, end, joint }) => {
      const rate = rateOf(joint);
      return rate ? [{ part, end, rate }] : [];
    }),
  };
}

/** The engine's fault for rates times `factor` at a position. */
export function softInBodies({ bodies }: CornerAssembly, position: Position, factor: number): readonly LayoutFault[] {
  const place = bodies && bodyPlaceAt(bodies, position);
  return place ? [{ kind: "soft", part: place.part, end: place.end, factor }] : [];
}

/** The engine's fault for play at a position: of a link along it, of a joint in every direction across its axis. */
export const playInBodies = ({ joint }: Position, total: number): readonly LayoutFault[] =>
  joint ? [{ kind: "play", part: joint.link, total }] : [];

/** A corner of several bodies with given faults. */
export class BodiesState implements RepairState {
  readonly band: { readonly jets: UncertainNumbers };
  private readonly balance: LayoutBalance;
  private near: LayoutEquilibria | null = null;

  constructor(model: BodiesModel, faults: readonly LayoutFault[]) {
    const { assembly, linkage, elasticity } = model;
    this.balance = new LayoutBalance(linkage, elasticity, "contact-height", faults);
    const parameters = listLayoutParameters(this.balance).map((one) => withDeviation(one, assembly, linkage));
    this.band = { jets: new UncertainNumbers(parameters, linkage.mechanism.pointNames) };
  }

  get carries(): boolean {
    return this.balance.carries;
  }

  solve(load: CornerLoad): SolvedState | null {
    const answer = solveLayout(this.balance, load, this.near);
    if ("unsolved" in answer) return null;
    this.near = answer;
    const { state, others } = answer;
    return {
      state,
      others,
      band: () => this.bandOf(state),
      reserves: () => computeLayoutReserves(this.balance, state).map(({ value, by }): Jet => [value, ...by]),
    };
  }

  bandAt(load: CornerLoad): WheelBand | null {
    return this.solve(load)?.band() ?? null;
  }

  /** A link held at either end of its play; of a joint, which has no two sides, none. */
  sidesAt(load: CornerLoad): readonly WheelBand[] {
    const [loose] = this.balance.loose;
    if (loose === undefined || loose.terms.length > 1) return [];
    return ([1, -1] as const).flatMap((side) => {
      const held = this.balance.follow(load, [side]);
      return "unsolved" in held ? [] : (this.bandOf(held) ?? []);
    });
  }

  forget(): void {
    this.near = null;
  }

  private bandOf(state: LayoutState): WheelBand | null {
    const by = computeLayoutDerivatives(this.balance, state);
    if (!by) return null;
    const { toe, camber, centre } = state.attitude;
    return { state, toe: [toe, ...by.toe], camber: [camber, ...by.camber], forward: [centre[0], ...by.forward] };
  }
}

/** An uncertain number of a layout with what is on file of it; points of one place are one point. */
function withDeviation(parameter: LayoutParameter, assembly: CornerAssembly, { mechanism }: LayoutLinkage): Parameter {
  if (parameter.kind === "rate") {
    const known = assembly.bodies?.places.find(({ part, end }) => (end ? `${part}.${end}` : part) === parameter.name);
    return { ...parameter, sd: known?.joint.rateSdShare ?? 0 };
  }
  const place = mechanism.points[parameter.point]?.join();
  const known = assembly.points.find(({ at }) => at.join() === place);
  return { ...parameter, sd: known?.sd[parameter.axis] ?? 0 };
}
