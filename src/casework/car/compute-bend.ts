import { type CarBalanceState, computeLoadsInBend, type WheelPlace } from "#engines/linkage";
import type { Finding } from "#numeric";
import { type Corner, positionsOf, type Rung, STANDARD_GRAVITY } from "#vehicle";
import type { CarQuestion, WholeCar } from "../car.ts";
import { computeFaultEffect } from "../fault/compute-fault-effect.ts";
import { faultInWords } from "../fault/fault-in-words.ts";
import { spreadOf } from "../sampling/spread.ts";
import { antiFigures } from "./anti-figures.ts";
import { type BendFacts, type BendMotion, type Known, PLACE_WORDS } from "./bend-facts.ts";
import { bendFigures } from "./bend-figures.ts";
import { giveOf } from "./bend-give.ts";
import { bendPlots } from "./bend-plots.ts";
import { type BendOver, bendStatesOf } from "./bend-states.ts";
import { describeBend } from "./bend-words.ts";
import { cornerRows } from "./corner-rows.ts";
import type { Models } from "./loaded-car.ts";

const PLACE_OF: Readonly<Record<Corner, WheelPlace>> = {
  "front-left": "frontLeft",
  "front-right": "frontRight",
  "rear-left": "rearLeft",
  "rear-right": "rearRight",
};

/**
 * The car in a steady bend, braked or driven as asked: lean, nod, loads and what the joints give, a torn one too. Findings
 * where it does not stand on four wheels there.
 */
export function computeBend(
  question: CarQuestion & { readonly motion: BendMotion },
  models: Models,
  rung: Rung,
): { readonly car: WholeCar } | { readonly findings: readonly Finding[] } {
  const { family, motion, changed } = question;
  if (changed !== undefined && !positionsOf(family).some(({ id }) => id === changed.position))
    return {
      findings: [
        {
          code: "unknown-position",
          path: "changed.position",
          got: changed.position,
          needed: "the id of a position of this family",
          hint: "Ids read like rear-left/trailing-link/inner-bush.",
        },
      ],
    };
  const states = bendStatesOf(family, models);
  const answer = states.carries ? states.solve({ lateral: motion.by, forward: motion.along }) : null;
  if (answer === null || !("state" in answer))
    return { findings: [noBalance(answer, motion, states.carries ? states.over(motion.along) : null)] };
  const { state } = answer;
  const still = states.solve({ lateral: 0, forward: 0 });
  if (!("state" in still)) return { findings: [noBalance(still, motion, null)] };
  const drawn = states.sample({ lateral: motion.by, forward: motion.along }, state);
  const sideOf = (place: WheelPlace) => (place.endsWith("Left") ? "left" : "right");
  const modelAt = (place: WheelPlace) => models[place.startsWith("front") ? "front" : "rear"];
  const give = (place: WheelPlace) => giveOf(modelAt(place), sideOf(place), state[place]);
  const facts: BendFacts = {
    question,
    motion,
    models,
    state,
    standing: still.state,
    antis: motion.along === 0 ? [] : antiFigures(family, states, motion.along < 0 ? "braked" : "driven"),
    draws: drawn.length,
    known: (of) => knownOf(of, state, drawn),
    gives: {
      frontLeft: give("frontLeft"),
      frontRight: give("frontRight"),
      rearLeft: give("rearLeft"),
      rearRight: give("rearRight"),
    },
    changed: changedOf(question, models, state),
  };
  const figures = bendFigures(facts);
  return {
    car: {
      motion,
      rung,
      invented: family.invented,
      parts: [],
      axis: "sideways, g",
      plots: bendPlots(states.over(motion.along)),
      figures,
      corners: cornerRows(figures),
      ...describeBend(facts),
    },
  };
}

/** A figure of the car on file with its scatter over the cars that may be; without any, one that nothing is known of. */
function knownOf(
  of: (state: CarBalanceState) => number,
  state: CarBalanceState,
  drawn: readonly CarBalanceState[],
): Known {
  const value = of(state);
  if (drawn.length < 2) return { value, spread: { low: value, high: value, sd: 0 }, sure: false };
  const spread = spreadOf(drawn.map(of));
  return { value, spread, sure: spread.low > 0 === value > 0 && spread.high > 0 === value > 0 };
}

function noBalance(
  answer: { readonly lifts: WheelPlace } | { readonly unsolved: string } | null,
  { by, along }: BendMotion,
  over: BendOver | null,
): Finding {
  const asked = `${(by / STANDARD_GRAVITY).toFixed(2)} g sideways, ${(along / STANDARD_GRAVITY).toFixed(2)} g along`;
  if (answer === null)
    return {
      code: "cannot-carry",
      path: "motion.by",
      got: asked,
      needed: "springs whose length changes when their wheel rises",
      hint: "Look at the springs' points in the family sheet.",
    };
  return {
    code: "no-equilibrium",
    path: "motion.by",
    got: "lifts" in answer ? `${asked}: the ${PLACE_WORDS[answer.lifts]} wheel lifts` : asked,
    needed: "a bend the car takes on four wheels",
    hint: liftHint(by, over),
  };
}

/** Up to where this car takes such a bend. */
function liftHint(by: number, over: BendOver | null): string {
  const end = over?.ends.find(({ way }) => way === (by < 0 ? -1 : 1));
  if (over === null || over.steps.length === 0)
    return "Ask for less braking or drive: it does not stand on four wheels even straight ahead.";
  return end === undefined
    ? "Ask for less."
    : `It takes ${(Math.abs(end.by) / STANDARD_GRAVITY).toFixed(2)} g sideways with this braking or drive.`;
}

/** What a torn, loose or firmer joint changes at its own wheel under the forces that wheel has in this bend. */
function changedOf({ family, changed }: CarQuestion, models: Models, state: CarBalanceState): BendFacts["changed"] {
  const position = positionsOf(family).find(({ id }) => id === changed?.position);
  if (changed === undefined || position === undefined || position.side === null) return null;
  const { axle, side } = position;
  const corner: Corner = `${axle}-${side}`;
  const place = PLACE_OF[corner];
  const wheel = state[place];
  const loads = computeLoadsInBend(models[axle].geometry, side, wheel);
  const effect =
    loads &&
    computeFaultEffect(family, {
      corner,
      position: changed.position,
      fault: changed.fault,
      condition: {
        contactRise: loads.still.contactRise,
        rack: 0,
        braking: wheel.braking,
        lateral: wheel.lateral,
        drive: wheel.drive,
      },
    });
  if (effect === null) return null;
  const words = { words: position.label, as: faultInWords(changed.fault), place };
  if ("findings" in effect) return { ...words, told: effect };
  const figure = effect.effect.figures.find(({ key }) => key === "toe-change");
  return figure ? { ...words, told: { figure } } : null;
}
