import { CarBalance, type CarBalanceState, computeBushGive, type LoadedAxle, modelBar } from "#engines/linkage";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { assumedMark, type Family, STANDARD_GRAVITY } from "#vehicle";
import type { CornerModel } from "../fault/corner-model.ts";
import { formatNumber } from "../fault/format-figure.ts";
import type { Figure } from "../fault-effect.ts";

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
    front: computeBushGive(models.front.geometry, models.front.elasticity, "right", state.frontRight),
    rear: computeBushGive(models.rear.geometry, models.rear.elasticity, "right", state.rearRight),
  };
  const turned = (radians: number): string => {
    const said = formatNumber(Math.abs(degreesFromRadians(radians)), 2);
    return Number(said) === 0 ? "keeps its toe" : `turns ${said}° ${radians > 0 ? "in" : "out"}`;
  };
  const giving =
    give.front && give.rear
      ? ` Under these forces the joints give: the outer front wheel ${turned(give.front.toe)}, the outer rear one ${turned(give.rear.toe)}.`
      : "";
  return {
    sentence: `In a steady bend at ${formatNumber(BEND, 1)} g the body leans ${formatNumber(degreesFromRadians(state.roll), 1)}°; ${newtons(state.moved.front)} go from the inner to the outer front wheel and ${newtons(state.moved.rear)} at the rear, so the front takes ${formatNumber(100 * frontShare(state), 0)} % of what moves.${giving}`,
    figures: figuresOf(family, state, give),
    computedSo: `Springs, bars and tyres (${formatNumber(USUAL_TYRE_RATE / 1000, 0)} N/mm each, common practice, no source) with the linkage itself, no roll-centre formula; wheels of an axle share its sideways force by their loads. Joints give at the height each wheel then has; their give is not led back to the lean. No band.`,
  };
}

const newtons = (force: number): string => `${formatNumber(force, 0)} N`;
const frontShare = ({ moved }: CarBalanceState): number => moved.front / (moved.front + moved.rear);

function figuresOf(
  family: Family,
  state: CarBalanceState,
  give: Readonly<Record<"front" | "rear", ReturnType<typeof computeBushGive>>>,
): readonly Figure[] {
  const figure = (axle: "front" | "rear", key: string, label: string, unit: "deg" | "N", value: number): Figure => ({
    key,
    label,
    value,
    unit,
    u: 0,
    range: null,
    band: null,
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
    signSure: true,
    settle: null,
  });
  return [
    figure("front", "bend-lean", "Lean of the body in this bend", "deg", degreesFromRadians(state.roll)),
    ...(["front", "rear"] as const).flatMap((axle) => {
      const given = give[axle];
      return [
        figure(axle, `bend-${axle}-moved`, `Load that goes to the outer ${axle} wheel`, "N", state.moved[axle]),
        ...(given
          ? [
              figure(
                axle,
                `bend-${axle}-toe`,
                `Toe the outer ${axle} wheel gives by its joints`,
                "deg",
                degreesFromRadians(given.toe),
              ),
            ]
          : []),
      ];
    }),
  ];
}
