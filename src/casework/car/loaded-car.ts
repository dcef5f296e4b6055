import { CarBalance, type LoadedAxle, modelBar } from "#engines/linkage";
import { type CornerAssembly, type Family, isAssumed, STANDARD_GRAVITY } from "#vehicle";
import { type CornerModel, modelOfAssembly } from "../fault/corner-model.ts";
import { type Draw, disturbCorner, drawFactor } from "../sampling/disturb-corner.ts";

/** Vertical rate of a standing car tyre, N/m (common practice, no source: 180 to 260 N/mm). */
export const USUAL_TYRE_RATE = 210_000;

/**
 * How well what no rung tells is known, standard deviations as shares (common practice, no source): entered beside assumed.
 * A car is weighed to a few people and a tank; a height of its mass is rarely measured; springs settle, bars have rubber.
 */
const SHARES = {
  mass: { entered: 0.03, assumed: 0.1 },
  massHeight: { entered: 0.04, assumed: 0.08 },
  springs: { entered: 0.05, assumed: 0.2 },
  unsprung: { entered: 0.1, assumed: 0.2 },
  brakes: { entered: 0.05, assumed: 0.1 },
  tyre: 0.09,
  bar: 0.1,
} as const;

/** The spreads above in words, for whom the page tells how sure it is. */
export const spreadWords = (family: Family): string => {
  const percent = (known: { readonly entered: number; readonly assumed: number }, assumed: boolean): string =>
    `${Math.round(200 * (assumed ? known.assumed : known.entered))} %`;
  return [
    `mass ±${percent(SHARES.mass, isAssumed(family, "kerb-mass"))}`,
    `its height ±${percent(SHARES.massHeight, isAssumed(family, "centre-of-mass-height"))}`,
    `springs ±${percent(SHARES.springs, isAssumed(family, "front-spring-rate"))} in front and ±${percent(SHARES.springs, isAssumed(family, "rear-spring-rate"))} at the rear`,
    `tyres ±${Math.round(200 * SHARES.tyre)} %`,
    `bars ±${Math.round(200 * SHARES.bar)} %`,
    `brake shares ±${percent(SHARES.brakes, isAssumed(family, "brake-shares"))}`,
  ].join(", ");
};

export type AxleKey = "front" | "rear";
export type Models = Readonly<Record<AxleKey, CornerModel>>;

/** The balance of a car line as it is on file. */
export const balanceOf = (family: Family, models: Models): CarBalance =>
  new CarBalance({
    front: axleOf(family, "front", models.front),
    rear: axleOf(family, "rear", models.rear),
    massHeight: family.cgHeight,
    gravity: STANDARD_GRAVITY,
  });

function axleOf(family: Family, key: AxleKey, { geometry, elasticity }: Pick<CornerModel, "geometry" | "elasticity">) {
  const { bar, unsprungMass, brakeShare, driveShare } = family[key];
  const axle: LoadedAxle = {
    geometry,
    springRate: elasticity.springRate,
    wheelLoad: elasticity.wheelLoad,
    unsprungMass,
    tyreRate: USUAL_TYRE_RATE,
    bar: bar ? modelBar(bar, geometry) : null,
    brakeShare,
    driveShare,
  };
  return axle;
}

/**
 * The same car as it may be: hard points and rubber of both axles drawn from their rung, masses, springs, tyres, bars and
 * brake shares from the spreads above; left and right alike.
 */
export function drawBalance(family: Family, models: Models, draw: Draw): CarBalance {
  const known = (of: { readonly entered: number; readonly assumed: number }, assumed: boolean): number =>
    drawFactor(draw, assumed ? of.assumed : of.entered);
  const mass = known(SHARES.mass, isAssumed(family, "kerb-mass"));
  const massHeight = family.cgHeight * known(SHARES.massHeight, isAssumed(family, "centre-of-mass-height"));
  const tyreRate = USUAL_TYRE_RATE * drawFactor(draw, SHARES.tyre);
  const brake = known(SHARES.brakes, isAssumed(family, "brake-shares"));
  const front = Math.min(1, family.front.brakeShare * brake);
  const drawn = (key: AxleKey, assembly: CornerAssembly): LoadedAxle => {
    const axle = axleOf(family, key, modelOfAssembly(disturbCorner(assembly, draw)));
    return {
      ...axle,
      springRate: axle.springRate * known(SHARES.springs, isAssumed(family, `${key}-spring-rate`)),
      wheelLoad: axle.wheelLoad * mass,
      unsprungMass: axle.unsprungMass * known(SHARES.unsprung, isAssumed(family, `${key}-unsprung-mass`)),
      tyreRate,
      bar: axle.bar && { ...axle.bar, torsion: axle.bar.torsion * drawFactor(draw, SHARES.bar) },
      brakeShare: key === "front" ? front : 1 - front,
    };
  };
  return new CarBalance(
    {
      front: drawn("front", models.front.assembly),
      rear: drawn("rear", models.rear.assembly),
      massHeight,
      gravity: STANDARD_GRAVITY,
    },
    { fast: true },
  );
}
