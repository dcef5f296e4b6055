import {
  type BalancedWheel,
  CarBalance,
  type CarBalanceState,
  computeLoadsInBend,
  FaultBand,
  type LoadedAxle,
  modelBar,
} from "#engines/linkage";
import { subtractJets } from "#numeric";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { assumedMark, type Family, STANDARD_GRAVITY } from "#vehicle";
import { bandOfAngles } from "../fault/change-band.ts";
import type { CornerModel } from "../fault/corner-model.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { findSettlingReading, isSignSure } from "../fault/settle.ts";
import type { Figure } from "../fault-effect.ts";
import { bandlessFigure } from "./bandless-figure.ts";

/** Sideways acceleration of the bend that is told, as a share of gravity: a brisk one (invented). */
const BEND = 0.5;
/** Vertical rate of a standing car tyre, N/m (common practice, no source: 180 to 260 N/mm). */
const USUAL_TYRE_RATE = 210_000;

/** The whole car in a steady bend: one sentence, the figures in it, and what they stand on. */
export interface CarBend {
  readonly sentence: string;
  readonly figures: readonly Figure[];
  readonly computedSo: string;
}

/**
 * The car in a steady bend to the left: how far it leans, what goes to the outer wheel of each axle and what the joints of
 * the outer wheels give under that. Null where there is no balance with four wheels on the ground.
 */
export function computeBend(family: Family, models: Readonly<Record<"front" | "rear", CornerModel>>): CarBend | null {
  const axleOf = (key: "front" | "rear"): LoadedAxle => {
    const { geometry, elasticity } = models[key];
    const { bar, unsprungMass } = family[key];
    return {
      geometry,
      springRate: elasticity.springRate,
      wheelLoad: elasticity.wheelLoad,
      unsprungMass,
      tyreRate: USUAL_TYRE_RATE,
      bar: bar ? modelBar(bar, geometry) : null,
    };
  };
  const balance = new CarBalance({
    front: axleOf("front"),
    rear: axleOf("rear"),
    massHeight: family.cgHeight,
    gravity: STANDARD_GRAVITY,
  });
  const answer = balance.carries ? balance.solve(BEND * STANDARD_GRAVITY) : null;
  if (answer === null || !("state" in answer)) return null;
  const { state } = answer;
  const give = {
    front: giveOf(models.front, state.frontRight),
    rear: giveOf(models.rear, state.rearRight),
  };
  const turned = ({ toe, sd }: Give): string => {
    if (!isSignSure(toe, sd)) return "turns one way or the other, which is not sure";
    return `turns ${formatNumber(Math.abs(degreesFromRadians(toe)), 2)}° ${toe > 0 ? "in" : "out"}`;
  };
  const giving =
    give.front && give.rear
      ? ` Under these forces the joints give: the outer front wheel ${turned(give.front)}, the outer rear one ${turned(give.rear)}.`
      : "";
  return {
    sentence: `In a steady bend at ${formatNumber(BEND, 1)} g the body leans ${formatNumber(degreesFromRadians(state.roll), 1)}°; ${newtons(state.moved.front)} go from the inner to the outer front wheel and ${newtons(state.moved.rear)} at the rear, so the front takes ${formatNumber(100 * frontShare(state), 0)} % of what moves.${giving}`,
    figures: figuresOf(family, state, give),
    computedSo: `Springs, bars and tyres (${formatNumber(USUAL_TYRE_RATE / 1000, 0)} N/mm each, common practice, no source) with the linkage itself, no roll-centre formula; wheels of an axle share its sideways force by their loads. Joints give at the height each wheel then has; their give is not led back to the lean. Lean and loads have no band.`,
  };
}

/** Toe an outer wheel turns by as its joints give, radians, in positive. */
interface Give {
  readonly toe: number;
  readonly sd: number;
  /** What reading would settle its sign; null where it is sure. */
  readonly settle: string | null;
}

/** Of the outer wheel of a bend to the left, the right one; null where its corner finds no balance. */
function giveOf(model: CornerModel, wheel: BalancedWheel): Give | null {
  const { geometry, elasticity, deviations, rates, correlations, assembly } = model;
  const loads = computeLoadsInBend(geometry, "right", wheel);
  const corner = { geometry, elasticity, hold: "contact-height" as const, faults: [] };
  const band = new FaultBand(corner, deviations, rates, correlations);
  if (!loads || !band.solver.carries) return null;
  const [still, loaded] = [loads.still, loads.loaded].map((load) => {
    const answer = band.solver.solve(load);
    return "state" in answer ? band.bandAt(answer.state, load) : null;
  });
  if (!still || !loaded) return null;
  const change = subtractJets(loaded.toe, still.toe);
  const [toe, sd] = [change[0] as number, band.jets.deviation(change)];
  return { toe, sd, settle: isSignSure(toe, sd) ? null : findSettlingReading(band.jets, change, assembly) };
}

const newtons = (force: number): string => `${formatNumber(force, 0)} N`;
const frontShare = ({ moved }: CarBalanceState): number => moved.front / (moved.front + moved.rear);

function figuresOf(
  family: Family,
  state: CarBalanceState,
  give: Readonly<Record<"front" | "rear", Give | null>>,
): readonly Figure[] {
  const figure = (axle: "front" | "rear", key: string, label: string, unit: "deg" | "N", value: number): Figure =>
    bandlessFigure({
      key,
      label,
      value,
      unit,
      rung: family[axle].rung,
      inputs: [
        { label: "Sideways", value: `${formatNumber(BEND, 1)} g, a bend to the left` },
        {
          label: "Mass, ready to drive",
          value: `${formatNumber(family.kerbMass, 0)} kg${assumedMark(family, "kerb-mass")}`,
        },
        {
          label: "Centre of mass",
          value: `${formatNumber(mmFromMetres(family.cgHeight), 0)} mm over the road${assumedMark(family, "centre-of-mass-height")}`,
        },
        { label: "Tyre", value: `${formatNumber(USUAL_TYRE_RATE / 1000, 0)} N/mm, common practice, no source` },
      ],
      relation:
        "balance of body and four wheels by virtual work on the linkages with springs, bars and tyres; with arms that lie level it is the handbook's distribution by roll stiffness; no band",
      source: "docs/method/linkage.md, section 16",
    });
  return [
    figure("front", "bend-lean", "Lean of the body in this bend", "deg", degreesFromRadians(state.roll)),
    ...(["front", "rear"] as const).flatMap((axle) => {
      const given = give[axle];
      return [
        figure(axle, `bend-${axle}-moved`, `Load that goes to the outer ${axle} wheel`, "N", state.moved[axle]),
        ...(given
          ? [
              {
                ...figure(
                  axle,
                  `bend-${axle}-toe`,
                  `Toe the outer ${axle} wheel gives by its joints`,
                  "deg",
                  degreesFromRadians(given.toe),
                ),
                u: degreesFromRadians(given.sd),
                band: bandOfAngles([{ value: degreesFromRadians(given.toe), sd: degreesFromRadians(given.sd) }]) as [
                  number,
                  number,
                ],
                relation:
                  "balance of the corner with rubber under its sideways force less that without, contact height held; band by exact derivatives",
                signSure: given.settle === null,
                settle: given.settle,
              },
            ]
          : []),
      ];
    }),
  ];
}
