import { type LoadedCar, TravelSweep } from "#engines/linkage";
import { mmFromMetres } from "#quantity";
import { assumedMark, type Family } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import type { Figure } from "../fault-effect.ts";
import { spreadOf } from "../sampling/spread.ts";
import type { BendStates } from "./bend-states.ts";
import type { AxleKey } from "./loaded-car.ts";

export type Along = "braked" | "driven";

const NAMES: Readonly<Record<Along, Readonly<Record<AxleKey, string>>>> = {
  braked: { front: "Anti-dive, front axle braked", rear: "Anti-lift, rear axle braked" },
  driven: { front: "Anti-lift, front axle driven", rear: "Anti-squat, rear axle driven" },
};

/**
 * Share, in percent, of the load that moves along the car which the arms of an axle bear at ride height instead of its
 * springs; positive resists the nod. Null where the axle has no part in it, or its linkage no slope there.
 */
function antiOf(car: LoadedCar, wheelbase: number, axle: AxleKey, along: Along): number | null {
  const { geometry, brakeShare = 0, driveShare = 0 } = car[axle];
  const share = along === "braked" ? brakeShare : driveShare;
  const at = new TravelSweep(geometry).solve({ travel: 0, rack: 0 });
  if (share === 0 || "foldAt" in at) return null;
  const slope = along === "braked" ? at.brakeSlope : at.driveSlope;
  return ((100 * share * wheelbase) / car.massHeight) * slope * (axle === "front" ? 1 : -1);
}

/** Kept with the states they are of: they hang on the car line alone, and a slider asks many times. */
const kept = new WeakMap<BendStates, Partial<Record<Along, readonly Figure[]>>>();

/** What the arms of both axles take of a nod, as a figure each with the scatter of the cars that may be. */
export function antiFigures(family: Family, states: BendStates, along: Along): readonly Figure[] {
  const known = kept.get(states) ?? {};
  const figures = known[along] ?? figuresOf(family, states, along);
  kept.set(states, { ...known, [along]: figures });
  return figures;
}

function figuresOf(family: Family, states: BendStates, along: Along): readonly Figure[] {
  const { nominal, drawn } = states.cars;
  return (["front", "rear"] as const).flatMap((axle): readonly Figure[] => {
    const value = antiOf(nominal, family.wheelbase, axle, along);
    if (value === null) return [];
    const all = drawn.flatMap((car) => antiOf(car, family.wheelbase, axle, along) ?? []);
    const spread = all.length < 2 ? null : spreadOf(all);
    const signSure = spread !== null && spread.low > 0 === value > 0 && spread.high > 0 === value > 0;
    const share = along === "braked" ? family[axle].brakeShare : family[axle].driveShare;
    return [
      {
        key: `anti-${along}-${axle}`,
        label: NAMES[along][axle],
        value,
        unit: "percent",
        u: spread?.sd ?? 0,
        range: null,
        band: spread && [spread.low, spread.high],
        rung: family[axle].rung,
        inputs: [
          {
            label: `Share of this axle, ${along}`,
            value: `${formatNumber(100 * share, 0)} %${along === "braked" ? assumedMark(family, "brake-shares") : ""}`,
          },
          { label: "Wheelbase", value: `${formatNumber(mmFromMetres(family.wheelbase), 0)} mm` },
          {
            label: "Centre of mass",
            value: `${formatNumber(mmFromMetres(family.cgHeight), 0)} mm over the road${assumedMark(family, "centre-of-mass-height")}`,
          },
        ],
        relation: `share of this axle, times wheelbase over height of the mass, times how far the ${along === "braked" ? "patch moves along the car (brake at the wheel)" : "wheel centre moves along the car (shaft from the body)"} per rise of the wheel at ride height; 100 %: the arms bear all, the springs nothing; under 0: they add to the nod. Band by sampling. The balance does not use it`,
        source: "docs/method/linkage.md, section 6, checked in docs/verification.md",
        signSure,
        settle: signSure ? null : "Measure the points of this axle's arms on the body, heights first.",
      },
    ];
  });
}
