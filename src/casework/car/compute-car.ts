import { type CarOnGround, placeCar, TravelBand, type WheelOnGround } from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians, type Metres } from "#quantity";
import type { Family, Rung } from "#vehicle";
import type { CarQuestion, WholeCar } from "../car.ts";
import { refuseBodies } from "../fault/bodies-refused.ts";
import { bandOfAngles } from "../fault/change-band.ts";
import { type CornerModel, modelCorner } from "../fault/corner-model.ts";
import type { TravelLine, TravelPlot } from "../travel/travel-sheet.ts";
import { antiFigures } from "./anti-figures.ts";
import { bendStatesOf } from "./bend-states.ts";
import type { CarFacts, RackFacts, WheelName } from "./car-facts.ts";
import { buildCarFigures } from "./car-figures.ts";
import { alongForm, carMotionForm } from "./car-motions.ts";
import { describeCar } from "./car-words.ts";
import { computeBend } from "./compute-bend.ts";
import { cornerRows } from "./corner-rows.ts";
import type { Models } from "./loaded-car.ts";
import { rackPlots } from "./rack-plots.ts";
import { rackSpreadOf, readRack } from "./rack-spread.ts";

/** Motions each way that curves go through; those over the rack bend more. */
const STEPS_EACH_WAY = { other: 10, rack: 20 } as const;
const NAMES: Readonly<Record<WheelName, string>> = {
  frontLeft: "front left",
  frontRight: "front right",
  rearLeft: "rear left",
  rearRight: "rear right",
};
/** A little over what is shown, as rounding on the way here may add. */
const alongMost = { brake: alongForm.read(alongForm.brake) + 1e-6, drive: alongForm.read(alongForm.drive) + 1e-6 };
const RUNGS: readonly Rung[] = ["layout", "scaled", "measured", "matched"];

/**
 * Four wheels of a car line on level ground over one motion of the body or the rack: camber and toe against the ground, the
 * bars' twist, and for the rack how far the outer wheel turns beside the exact condition of one turn centre. Findings where
 * a wheel cannot follow at the asked amount.
 */
export function computeCar(
  question: CarQuestion,
): { readonly car: WholeCar } | { readonly findings: readonly Finding[] } {
  const { family, motion } = question;
  const form = carMotionForm(motion.kind);
  const most = form.read(form.most(family));
  const asked = form.show(motion.by);
  if (!(Math.abs(motion.by) <= most * (1 + 1e-9)))
    return {
      findings: [
        {
          code: "out-of-range",
          path: "motion.by",
          got: `${asked} ${form.unit}`,
          needed: `${-form.most(family)} to ${form.most(family)} ${form.unit}`,
          hint: "",
        },
      ],
    };
  if (motion.kind === "bend" && !(motion.along >= -alongMost.brake && motion.along <= alongMost.drive))
    return {
      findings: [
        {
          code: "out-of-range",
          path: "motion.along",
          got: `${alongForm.show(motion.along)} g`,
          needed: `${-alongForm.brake} to ${alongForm.drive} g`,
          hint: "",
        },
      ],
    };
  const refused = refuseBodies(
    family,
    ["front", "rear"],
    "four wheels on one body need all bodies of both corners at once",
  );
  if (refused.length > 0) return { findings: refused };
  const [front, rear] = [modelCorner(family, "front-left"), modelCorner(family, "rear-left")];
  const rung = RUNGS[Math.min(RUNGS.indexOf(family.front.rung), RUNGS.indexOf(family.rear.rung))] ?? "layout";
  if (motion.kind === "bend") return computeBend({ ...question, motion }, { front, rear }, rung);
  const place = (amount: number): CarOnGround | null =>
    placeCar(
      front.geometry,
      rear.geometry,
      {
        heave: motion.kind === "heave" ? amount : 0,
        roll: motion.kind === "roll" ? amount : 0,
        pitch: motion.kind === "pitch" ? amount : 0,
        // About the place of the centre of mass on the ground: the body is not moved along with it.
        about: [-(1 - family.frontWeightShare) * family.wheelbase, 0, 0],
      },
      motion.kind === "rack" ? amount : 0,
    );
  const [rest, there] = [place(0), place(motion.by)];
  if (!rest || !there)
    return {
      findings: [
        {
          code: "beyond-fold",
          path: "motion.by",
          got: `${asked} ${form.unit}`,
          needed: "a motion every wheel can follow to the ground",
          hint: "Move the car less.",
        },
      ],
    };
  const steps = STEPS_EACH_WAY[motion.kind === "rack" ? "rack" : "other"];
  const amounts = Array.from({ length: 2 * steps + 1 }, (_, i) => ((i - steps) / steps) * most);
  const over = amounts.flatMap((amount) => {
    const car = place(amount);
    return car ? [{ amount, car }] : [];
  });
  const facts: CarFacts = {
    question,
    front,
    rear,
    rest,
    there,
    over,
    bands: { front: bandOf(front), rear: bandOf(rear) },
    rack: motion.kind === "rack" ? rackFacts(family, motion.by, { front, rear }, amounts) : null,
    antis:
      motion.kind === "pitch"
        ? (["braked", "driven"] as const).flatMap((along) =>
            antiFigures(family, bendStatesOf(family, { front, rear }), along),
          )
        : [],
  };
  const figures = buildCarFigures(facts);
  return {
    car: {
      motion,
      rung,
      invented: family.invented,
      parts: [],
      axis: form.axis,
      plots: plotsOf(facts),
      figures,
      corners: cornerRows(figures, {
        alike: motion.kind === "heave" || motion.kind === "pitch",
        turns:
          motion.by >= 0 ? { frontLeft: "inner", frontRight: "outer" } : { frontLeft: "outer", frontRight: "inner" },
      }),
      ...describeCar(facts),
    },
  };
}

const bandOf = (model: CornerModel): TravelBand => new TravelBand(model.geometry, model.deviations, model.correlations);

/** The front axle steered, over all amounts and where it is asked for, with the axles that may be. */
function rackFacts(family: Family, asked: Metres, models: Models, amounts: readonly Metres[]): RackFacts {
  const spread = rackSpreadOf(family, models);
  const over = spread.over(amounts);
  const read = (rack: Metres) => readRack(models.front.geometry, family.wheelbase, rack);
  return {
    there: read(asked),
    drawn: spread.at(asked),
    over: amounts.flatMap((amount, i) => {
      const at = read(amount);
      return at === null ? [] : [{ amount, read: at, drawn: over[i] ?? [] }];
    }),
  };
}

function plotsOf(facts: CarFacts): readonly TravelPlot[] {
  const { question, over, rack } = facts;
  const { kind } = question.motion;
  if (kind === "rack") return rack === null ? [] : rackPlots(rack);
  // Left and right do the same where the body does not lean.
  const wheels: readonly WheelName[] =
    kind === "roll" ? ["frontLeft", "frontRight", "rearLeft", "rearRight"] : ["frontLeft", "rearLeft"];
  return over.length < 2 ? [] : [angleOver(facts, "toe", wheels), angleOver(facts, "camber", wheels)];
}

function angleOver(
  { over, rest, bands, question }: CarFacts,
  key: "toe" | "camber",
  wheels: readonly WheelName[],
): TravelPlot {
  const { kind } = question.motion;
  return {
    figure: key,
    title:
      key === "toe" ? "toe against the car, from standing, °, in is +" : "camber against the ground, from standing, °",
    unit: "deg",
    lines: wheels.map((name): TravelLine => {
      const points = over.map(({ amount, car }) => {
        const value = degreesFromRadians(car[name][key] - rest[name][key]);
        const sd = deviationAt(bands[name.startsWith("front") ? "front" : "rear"], key, car[name]);
        const [low, high] = bandOfAngles([{ value, sd: degreesFromRadians(sd) }]);
        return { amount, value, low, high };
      });
      return {
        state: "sound",
        words: kind === "roll" ? NAMES[name] : name.startsWith("front") ? "front" : "rear",
        subject: name.startsWith("front") ? "sound" : "beside",
        rises: points.map((p) => p.amount),
        values: points.map((p) => p.value),
        low: points.map((p) => p.low),
        high: points.map((p) => p.high),
      };
    }),
    leftOut: [],
  };
}

/** Standard deviation of an angle's change at the travel a wheel takes; 0 where the corner does not reach it. */
export function deviationAt(band: TravelBand, key: "toe" | "camber", wheel: WheelOnGround): number {
  const at = band.solve(wheel.travel);
  return "foldAt" in at ? 0 : at[key === "toe" ? "toeChange" : "camberChange"].sd;
}
