import { degreesFromRadians } from "#quantity";
import { layoutDoubt } from "#vehicle";
import type { WholeCar } from "../car.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { isSignSure } from "../fault/settle.ts";
import { isBarDoubted, twistOf } from "./bar-twist.ts";
import type { CarFacts, WheelName } from "./car-facts.ts";
import { carMotionForm } from "./car-motions.ts";

const degrees = (radians: number): string => `${formatNumber(Math.abs(degreesFromRadians(radians)), 2)}°`;

/** The words of a whole car, every number in them taken from where it stands. */
export function describeCar(facts: CarFacts): Pick<WholeCar, "sentence" | "howSure" | "computedSo"> {
  const rack = facts.question.motion.kind === "rack";
  const doubt = layoutDoubt(facts.front.assembly, ["front", "rear"]);
  return {
    sentence: sentenceOf(facts),
    howSure: rack
      ? `${doubt}Bands hold 95 % and are from ${facts.rack?.drawn.length ?? 0} front axles drawn as this one may be (fixed seed): every hard point from its rung. The difference of two large angles hangs on the points of the tie rods: read both wheels on turn plates before it is called wrong.`
      : `${doubt}${barDoubt(facts)}Bands hold 95 % and are those of each corner at the travel its wheel takes; a value whose sign is less than 97.5 % sure is not printed. Tyres are rigid discs.`,
    computedSo: rack
      ? "Both front wheels by the same rack, the right one as the mirror image. Exact means: with both wheels rolling about one point on the line of the rear axle."
      : "The body stands as told and every wheel travels until its tyre touches level ground; no force, joints without rubber. Camber is against the ground, so it takes the lean with it.",
  };
}

function sentenceOf(facts: CarFacts): string {
  const { question, there, rest } = facts;
  const { motion } = question;
  if (motion.by === 0)
    return "The car stands at ride height, wheels straight: move it, and here stands what its wheels do.";
  if (motion.kind === "rack") return steeringSentence(facts);
  const said = (name: WheelName, words: string): string => {
    const axle = name.startsWith("front") ? "front" : "rear";
    const toe = there[name].toe - rest[name].toe;
    const camber = there[name].camber - rest[name].camber;
    const at = facts.bands[axle].solve(there[name].travel);
    const sd = "foldAt" in at ? { toe: 0, camber: 0 } : { toe: at.toeChange.sd, camber: at.camberChange.sd };
    const turns = isSignSure(toe, sd.toe)
      ? `turns ${degrees(toe)} ${toe > 0 ? "in" : "out"}`
      : "turns one way or the other, which is not sure";
    const leans = isSignSure(camber, sd.camber)
      ? `leans ${degrees(camber)} ${camber > 0 ? "outward" : "inward"} at its top`
      : "keeps its camber within what is known";
    return `${words} ${turns} and ${leans}`;
  };
  if (motion.kind === "roll") {
    const side = motion.by > 0 ? "Right" : "Left";
    const words = side.toLowerCase();
    return `With the body leaning ${degrees(motion.by)} to the ${words}, as in a bend to the ${words === "right" ? "left" : "right"}: ${said(`front${side}`, `the loaded front ${words} wheel`)}, ${said(`rear${side}`, `the rear ${words} one`)}.`;
  }
  const how =
    motion.kind === "heave"
      ? `With the body ${formatNumber(Math.abs(carMotionForm("heave").show(motion.by)), 0)} mm ${motion.by > 0 ? "up" : "down"}`
      : `With the nose ${degrees(motion.by)} ${motion.by > 0 ? "down" : "up"}`;
  return `${how}: ${said("frontLeft", "each front wheel")}, ${said("rearLeft", "each rear wheel")}.`;
}

/** Said of a bar whose path on file would have to twist further than a bar takes; "" where none would. */
function barDoubt({ question, there, front, rear }: CarFacts): string {
  if (question.motion.kind !== "roll") return "";
  const models = { front, rear };
  return (["front", "rear"] as const)
    .map((axle) => {
      const [left, right] = axle === "front" ? [there.frontLeft, there.frontRight] : [there.rearLeft, there.rearRight];
      const bar = twistOf(question.family, axle, models[axle], { left: left.travel, right: right.travel });
      return bar !== null && isBarDoubted(bar, question.motion.by)
        ? `The ${axle} bar would twist ${formatNumber(degreesFromRadians(Math.abs(bar.twist)), 0)}°, further than a bar takes: its path on file gives it too short a lever, and no force is printed. `
        : "";
    })
    .join("");
}

function steeringSentence({ rack, question }: CarFacts): string {
  const there = rack?.there ?? null;
  if (there === null) return "The front wheels of this car line are not turned by a rack.";
  const { inner, outer, correctOuter, error } = there;
  const { by } = question.motion;
  const much =
    Math.abs(error) < 0.0005
      ? "as exactly as can be told"
      : `${degrees(error)} ${error > 0 ? "too far" : "too little"}`;
  return `With the rack ${formatNumber(Math.abs(carMotionForm("rack").show(by)), 0)} mm to the ${by > 0 ? "left" : "right"} the inner wheel turns ${degrees(inner)}, the outer one ${degrees(outer)}; to roll without slip it would turn ${degrees(correctOuter)}: ${much}.`;
}
