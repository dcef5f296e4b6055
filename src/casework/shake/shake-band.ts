import { normalFrom, seededRandom } from "#numeric";
import type { CornerAssembly } from "#vehicle";
import { disturbCorner, drawFactor } from "../sampling/disturb-corner.ts";
import { type Spread, spreadOf } from "../sampling/spread.ts";
import { type DynamicsBand, spreadDynamics } from "./bush-dynamics.ts";
import { computeShakeCurves, SPEEDS } from "./shake-curves.ts";
import { makeShakeModel, type ShakeModel, type ShakeWheel } from "./shake-model.ts";
import { WHEEL_SPREAD } from "./shake-wheel.ts";

const SEED = 20_260_514;
const CORNERS = 240;
/** Fluid, brake and mass are drawn anew this often for each drawn corner, whose balance is the dear part. */
const PER_CORNER = 10;

/** Spreads of the curves and of what is read from them, movements per thickness variation. */
export interface ShakeBand {
  readonly sound: readonly Spread[];
  readonly leaked: readonly Spread[];
  /** Leaked over sound at every speed. */
  readonly ratios: readonly Spread[];
  /** The same where a draw shakes most. */
  readonly ratio: Spread;
  /** Index of the worst speed. */
  readonly worst: Spread;
  readonly soundAtWorst: Spread;
  readonly leakedAtWorst: Spread;
  /** The bush alone. */
  readonly bush: DynamicsBand;
  readonly draws: number;
}

/** A model whose fluid, brake and mass are drawn once more. */
function redraw(model: ShakeModel, fluidSd: number, draw: () => number): ShakeModel {
  const { bush, disc } = model;
  const fluid = (): number => drawFactor(draw, fluidSd);
  return {
    ...model,
    mass: model.mass * drawFactor(draw, WHEEL_SPREAD.mass),
    disc: {
      ...disc,
      friction: disc.friction * drawFactor(draw, WHEEL_SPREAD.friction),
      caliper: disc.caliper * drawFactor(draw, WHEEL_SPREAD.caliper),
    },
    bush: {
      ...bush,
      lossFactor: bush.lossFactor * fluid(),
      volume: bush.volume * fluid(),
      fluidInertia: bush.fluidInertia * fluid(),
      fluidDamping: bush.fluidDamping * fluid(),
    },
  };
}

/**
 * The band of a shake by sampling with a fixed seed: a resonance moves and changes its height with every rate, so that
 * no straight line of first order follows it. Hard points normal, rates, fluid, brake and mass with normal logarithms,
 * all independent. Corners that find no balance are left out. Null where none finds one.
 */
export function sampleShakeBand(
  assembly: CornerAssembly,
  link: string,
  wheel: ShakeWheel,
  fluidSd: number,
): ShakeBand | null {
  const draw = normalFrom(seededRandom(SEED));
  const models: ShakeModel[] = [];
  for (let i = 0; i < CORNERS; i++) {
    const model = makeShakeModel(disturbCorner(assembly, draw), link, wheel);
    for (let k = 0; k < PER_CORNER && model !== null; k++) models.push(redraw(model, fluidSd, draw));
  }
  if (models.length < 2) return null;
  const all = models.map(computeShakeCurves);
  return {
    sound: SPEEDS.map((_, i) => spreadOf(all.map(({ sound }) => sound[i] as number))),
    leaked: SPEEDS.map((_, i) => spreadOf(all.map(({ leaked }) => leaked[i] as number))),
    ratios: SPEEDS.map((_, i) =>
      spreadOf(all.map(({ sound, leaked }) => (leaked[i] as number) / (sound[i] as number))),
    ),
    ratio: spreadOf(all.map(({ ratio }) => ratio)),
    worst: spreadOf(all.map(({ worst }) => worst)),
    soundAtWorst: spreadOf(all.map(({ sound, worst }) => sound[worst] as number)),
    leakedAtWorst: spreadOf(all.map(({ leaked, worst }) => leaked[worst] as number)),
    bush: spreadDynamics(models.map(({ bush }) => bush)),
    draws: all.length,
  };
}
