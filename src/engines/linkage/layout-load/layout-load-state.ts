import { add, factorise, makeFactorisation, scale, solveFactorised, subtract, type Vector } from "#numeric";
import type { Kilograms, Metres, Newtons, NewtonsPerMetre } from "#quantity";
import type { BodyLayout } from "#vehicle";
import type { LayoutLinkage } from "../layout-linkage.ts";
import { PlacedMeasure } from "../layout-rubber/placed-measure.ts";
import { LayoutSweep } from "../layout-sweep.ts";
import type { Support } from "../load-states/index.ts";
import type { Measure } from "../mechanism.ts";
import type { Pose } from "../pose.ts";
import type { WheelAttitude } from "../wheel-figures.ts";
import { forceRow, placeOnBody, pointAlongBody } from "./body-place.ts";

/** A layout with what stands on it, left side. */
export interface LoadedLayout {
  readonly layout: BodyLayout;
  readonly springRate: NewtonsPerMetre;
  /** At the contact patch at ride height, unsprung weight included. */
  readonly wheelLoad: Newtons;
  readonly unsprungMass: Kilograms;
  /** Wheel-centre travel from ride height down to the stop, positive; the stop is in the damper. */
  readonly droop: Metres;
  /** In m/s2. */
  readonly gravity: number;
}

/**
 * Force in a joint, of its first body on its second (of a slider: of the body with the line on the other); at the end of a
 * link: of the link on what carries its "to", of what carries its "from" on the link.
 */
export interface PartLoad {
  readonly part: string;
  readonly end: "from" | "to" | null;
  readonly force: Vector;
}

/** Forces of a layout held in one way; newtons, vehicle frame, left side. */
export interface LayoutLoadState {
  readonly support: Support;
  /** Wheel-centre travel from ride height, metres. */
  readonly travel: Metres;
  readonly pose: Pose;
  readonly attitude: WheelAttitude;
  /** Push of the spring. */
  readonly spring: Newtons;
  /** Pull of the droop stop in the damper, 0 where it is not reached; null where there is no damper. */
  readonly stop: Newtons | null;
  /** Force of the support, upward, and where it stands; 0 and null in the other states. */
  readonly under: Newtons;
  readonly supportAt: Vector | null;
  readonly wheelLoad: Newtons;
  /** Joints, then both ends of every link. */
  readonly joints: readonly PartLoad[];
  /** How the joints answer a force and a moment of a hand on the wheel. */
  readonly answerTo: (force: Vector, moment: Vector) => readonly PartLoad[];
  /** What a hand brings into a part along the ways it can be loose; null where there is no such part or nothing holds. */
  readonly passedBy: (part: string, force: Vector, moment: Vector) => Newtons | null;
  /** What carries the wheel, over the steps of all bodies for a unit of it; null at ride height (the spring does). */
  readonly carrierRow: Float64Array | null;
}

export type LayoutLoadAnswer =
  | { readonly state: LayoutLoadState }
  | { readonly foldAt: Metres }
  | { readonly unsolved: "cannot-carry" };

/** A support's place, and what a unit of it does to the body or the link it stands under. */
interface Standing {
  readonly at: Vector;
  readonly row: Float64Array;
  /** The link it stands under and which share of it goes to the link's "to"; null under a body. */
  readonly link: { readonly name: string; readonly share: number } | null;
}

const UP: Vector = [0, 0, 1];

/**
 * Static forces of a rigid layout in one way of holding it: all joints and what carries the wheel (spring, stop in the damper,
 * or a support under a body or link) balance the weight at the wheel centre and, at ride height, the ground. As many equations
 * as unknowns. Weight of the other bodies is part of the unsprung mass.
 */
export function computeLayoutLoadState(loaded: LoadedLayout, support: Support): LayoutLoadAnswer {
  const sweep = new LayoutSweep(loaded.layout);
  const { linkage } = sweep;
  const travel = support.kind === "ride" ? 0 : -loaded.droop + (support.kind === "under" ? support.raised : 0);
  const [design, position] = [0, travel].map((to) => sweep.solve({ travel: to, rack: 0 }));
  if (!design || !position || "foldAt" in design) return { unsolved: "cannot-carry" };
  if ("foldAt" in position) return { foldAt: position.foldAt };
  if (!linkage.spring) return { unsolved: "cannot-carry" };
  const weight: Vector = [0, 0, -loaded.unsprungMass * loaded.gravity];
  const heavy = (pose: Pose, attitude: WheelAttitude): Float64Array =>
    forceRow(linkage, pose, 0, attitude.centre, weight);
  const ride = new RigidBalance(linkage, design.pose);
  const ground = forceRow(linkage, design.pose, 0, design.attitude.contact, scale(UP, loaded.wheelLoad));
  const springRow = ride.rowOf(linkage.spring).row;
  const standing = ride.solve([ground, heavy(design.pose, design.attitude)], springRow);
  if (!standing) return { unsolved: "cannot-carry" };
  const own = { support, travel, pose: position.pose, attitude: position.attitude };
  if (support.kind === "ride")
    return {
      state: {
        ...own,
        spring: standing.carrier,
        stop: linkage.damper ? 0 : null,
        under: 0,
        supportAt: null,
        wheelLoad: loaded.wheelLoad,
        ...ride.answers(standing.multipliers, springRow, null, 0),
        carrierRow: null,
      },
    };
  const balance = new RigidBalance(linkage, position.pose);
  const placed = balance.rowOf(linkage.spring);
  const longer = placed.value - ride.rowOf(linkage.spring).value;
  const spring = Math.max(0, standing.carrier - loaded.springRate * longer);
  const loads = [heavy(position.pose, position.attitude), placed.row.map((x) => spring * x)];
  if (support.kind === "hanging") {
    if (!linkage.damper) return { unsolved: "cannot-carry" };
    const carrier = balance.rowOf(linkage.damper).row.map((x) => -x);
    const held = balance.solve(loads, carrier);
    if (!held) return { unsolved: "cannot-carry" };
    const rest = { spring, stop: held.carrier, under: 0, supportAt: null, wheelLoad: 0, carrierRow: carrier };
    return { state: { ...own, ...rest, ...balance.answers(held.multipliers, carrier, null, 0) } };
  }
  const stand = balance.standUnder(support.part, support.share);
  const held = stand && balance.solve(loads, stand.row);
  if (!stand || !held) return { unsolved: "cannot-carry" };
  return {
    state: {
      ...own,
      spring,
      stop: linkage.damper ? 0 : null,
      under: held.carrier,
      supportAt: stand.at,
      wheelLoad: 0,
      carrierRow: stand.row,
      ...balance.answers(held.multipliers, stand.row, stand, held.carrier),
    },
  };
}

/** Balance of all bodies at one pose: a multiplier for each measure of the joints, and one force that carries the wheel. */
class RigidBalance {
  private readonly rows: readonly Float64Array[];
  private readonly size: number;

  constructor(
    private readonly linkage: LayoutLinkage,
    private readonly pose: Pose,
  ) {
    this.size = 6 * linkage.bodies.length;
    this.rows = linkage.mechanism.constraints.map((measure) => this.rowOf(measure).row);
  }

  /** Value of a measure and its gradient by the steps of all bodies. */
  rowOf(measure: Measure): PlacedMeasure {
    return new PlacedMeasure(this.linkage.mechanism, measure, this.pose, 0);
  }

  /** Multipliers (tension of a link positive) and the size of the carrier that balance the loads; null where singular. */
  solve(
    loads: readonly ArrayLike<number>[],
    carrier: ArrayLike<number>,
  ): { readonly multipliers: readonly number[]; readonly carrier: number } | null {
    const n = this.size;
    const f = makeFactorisation(n);
    const b = new Float64Array(n);
    for (let c = 0; c < n; c++) {
      for (let i = 0; i < n - 1; i++) f.lu[n * c + i] = (this.rows[i] as Float64Array)[c] as number;
      f.lu[n * c + n - 1] = -(carrier[c] as number);
      b[c] = loads.reduce((sum, load) => sum + (load[c] as number), 0);
    }
    if (!factorise(f) || f.pivotRatio < 1e-13) return null;
    solveFactorised(f, b);
    return { multipliers: [...b.subarray(0, n - 1)], carrier: b[n - 1] as number };
  }

  /** Where a support stands under a body or a link; null where there is no such part. */
  standUnder(part: string, share: number): Standing | null {
    const { linkage, pose } = this;
    const { layout, bodies } = linkage;
    const body = bodies.indexOf(part);
    if (body >= 0) {
      const at = placeOnBody(linkage, pose, body, pointAlongBody(layout, part, share));
      return { at, row: forceRow(linkage, pose, body, at, UP), link: null };
    }
    const link = layout.links.find(({ name }) => name === part);
    if (!link) return null;
    const [from, to] = [link.from, link.to].map(({ on, at }) => {
      const carrier = bodies.indexOf(on);
      return { carrier, place: placeOnBody(linkage, pose, carrier, layout.points[at] ?? linkage.wheel.centre) };
    });
    if (!from || !to) return null;
    const low = forceRow(linkage, pose, from.carrier, from.place, scale(UP, 1 - share));
    const high = forceRow(linkage, pose, to.carrier, to.place, scale(UP, share));
    const line = subtract(to.place, from.place);
    return {
      at: add(from.place, scale(line, share)),
      row: low.map((x, i) => x + (high[i] as number)),
      link: { name: part, share },
    };
  }

  /** Forces in all joints, and how they answer a hand. */
  answers(
    multipliers: readonly number[],
    carrier: Float64Array,
    stand: Standing | null,
    under: Newtons,
  ): Pick<LayoutLoadState, "joints" | "answerTo" | "passedBy"> {
    const hand = (force: Vector, moment: Vector) => {
      const row = new Float64Array(this.size);
      row.set([...force, ...moment]);
      return this.solve([row], carrier);
    };
    return {
      joints: this.joints(multipliers, stand, under),
      answerTo: (force, moment) => {
        const held = hand(force, moment);
        return held ? this.joints(held.multipliers, stand, held.carrier) : [];
      },
      passedBy: (part, force, moment) => {
        const held = hand(force, moment);
        return held && this.passedBy(part, held.multipliers);
      },
    };
  }

  /** What a part passes along the ways it can be loose: a link along itself, a bush across its axis, a ball or slider all of it. */
  private passedBy(part: string, multipliers: readonly number[]): number | null {
    const { layout, mechanism } = this.linkage;
    const isBush = layout.joints.find(({ name }) => name === part)?.kind === "bush";
    const parts = mechanism.constraints.flatMap((m, i) =>
      m.joint === part && !(isBush && m.kind === "offset" && m.which === 2) ? [multipliers[i] as number] : [],
    );
    return parts.length === 0 ? null : Math.hypot(...parts);
  }

  private joints(multipliers: readonly number[], stand: Standing | null, under: Newtons): readonly PartLoad[] {
    const { layout, mechanism } = this.linkage;
    const sums = new Map<string, Vector>();
    mechanism.constraints.forEach((measure, i) => {
      // A multiplier times the way a measure grows is what its second body does to the joint.
      const force = scale(this.rowOf(measure).along, -(multipliers[i] as number));
      sums.set(measure.joint, add(sums.get(measure.joint) ?? [0, 0, 0], force));
    });
    const of = (part: string): Vector => sums.get(part) ?? [0, 0, 0];
    return [
      ...layout.joints.map(({ name }): PartLoad => ({ part: name, end: null, force: of(name) })),
      ...layout.links.flatMap(({ name }): PartLoad[] => {
        const share = stand?.link?.name === name ? stand.link.share : null;
        const to = share === null ? of(name) : add(of(name), scale(UP, share * under));
        return [
          { part: name, end: "from", force: share === null ? to : subtract(to, scale(UP, under)) },
          { part: name, end: "to", force: to },
        ];
      }),
    ];
  }
}
