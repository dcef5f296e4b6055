import { type CarBalanceState, computeLoadsInBend, type WheelPlace, wheelPlaces } from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians } from "#quantity";
import { type Corner, type Family, positionsOf, type Rung, STANDARD_GRAVITY } from "#vehicle";
import type { CarQuestion, WholeCar } from "../car.ts";
import { computeFaultEffect } from "../fault/compute-fault-effect.ts";
import { spreadOf } from "../sampling/spread.ts";
import type { TravelLine, TravelPlot } from "../travel/travel-sheet.ts";
import { type BendFacts, type BendMotion, type Known, PLACE_WORDS } from "./bend-facts.ts";
import { bendFigures } from "./bend-figures.ts";
import { giveOf } from "./bend-give.ts";
import { type BendStates, bendStatesOf } from "./bend-states.ts";
import { describeBend } from "./bend-words.ts";
import { carMotionForm } from "./car-motions.ts";
import type { Models } from "./loaded-car.ts";

const STEPS_EACH_WAY = 6;
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
  const { family, motion, torn } = question;
  if (torn !== undefined && !positionsOf(family).some(({ id }) => id === torn.position))
    return {
      findings: [
        {
          code: "unknown-position",
          path: "torn.position",
          got: torn.position,
          needed: "the id of a position of this family",
          hint: "Ids read like rear-left/trailing-link/inner-bush.",
        },
      ],
    };
  const states = bendStatesOf(family, models);
  const answer = states.carries ? states.solve({ lateral: motion.by, forward: motion.along }) : null;
  if (answer === null || !("state" in answer)) return { findings: [noBalance(answer, motion)] };
  const { state } = answer;
  const drawn = states.sample({ lateral: motion.by, forward: motion.along });
  const sideOf = (place: WheelPlace) => (place.endsWith("Left") ? "left" : "right");
  const modelAt = (place: WheelPlace) => models[place.startsWith("front") ? "front" : "rear"];
  const give = (place: WheelPlace) => giveOf(modelAt(place), sideOf(place), state[place]);
  const facts: BendFacts = {
    question,
    motion,
    models,
    state,
    draws: drawn.length,
    known: (of) => knownOf(of, state, drawn),
    gives: {
      frontLeft: give("frontLeft"),
      frontRight: give("frontRight"),
      rearLeft: give("rearLeft"),
      rearRight: give("rearRight"),
    },
    torn: tornOf(question, models, state),
  };
  return {
    car: {
      motion,
      rung,
      invented: family.invented,
      parts: [],
      axis: "sideways, g",
      plots: plotsOf(states, family, motion),
      figures: bendFigures(facts),
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
    hint: "Ask for less.",
  };
}

/** What the torn rubber changes at its own wheel under the forces that wheel has in this bend. */
function tornOf({ family, torn }: CarQuestion, models: Models, state: CarBalanceState): BendFacts["torn"] {
  const position = positionsOf(family).find(({ id }) => id === torn?.position);
  if (torn === undefined || position === undefined || position.side === null) return null;
  const { axle, side } = position;
  const corner: Corner = `${axle}-${side}`;
  const place = PLACE_OF[corner];
  const wheel = state[place];
  const loads = computeLoadsInBend(models[axle].geometry, side, wheel);
  const effect =
    loads &&
    computeFaultEffect(family, {
      corner,
      position: torn.position,
      fault: { kind: "torn", grade: torn.grade },
      condition: {
        contactRise: loads.still.contactRise,
        rack: 0,
        braking: wheel.braking,
        lateral: wheel.lateral,
        drive: wheel.drive,
      },
    });
  if (effect === null) return null;
  if ("findings" in effect) return { words: position.label, place, told: effect };
  const figure = effect.effect.figures.find(({ key }) => key === "toe-change");
  return figure ? { words: position.label, place, told: { figure } } : null;
}

function plotsOf(states: BendStates, family: Family, { along }: BendMotion): readonly TravelPlot[] {
  const form = carMotionForm("bend");
  const most = form.read(form.most(family));
  const solved: { by: number; state: CarBalanceState }[] = [];
  // From standing outward on either side, each begun where the one before it ended; a side ends where a wheel lifts.
  for (const way of [1, -1]) {
    let near: CarBalanceState | null = null;
    for (let i = way === 1 ? 0 : 1; i <= STEPS_EACH_WAY; i++) {
      const by = (way * i * most) / STEPS_EACH_WAY;
      const answer = states.solve({ lateral: by, forward: along }, near);
      if (!("state" in answer)) break;
      near = answer.state;
      solved.push({ by, state: near });
    }
  }
  solved.sort((a, b) => a.by - b.by);
  if (solved.length < 2) return [];
  const line = (words: string, subject: TravelLine["subject"], of: (s: CarBalanceState) => number): TravelLine => {
    const values = solved.map(({ state }) => of(state));
    return { state: "sound", words, subject, rises: solved.map(({ by }) => by), values, low: values, high: values };
  };
  return [
    {
      figure: "load",
      title: "load of each wheel, kN",
      unit: "kN",
      lines: wheelPlaces.map((place) =>
        line(PLACE_WORDS[place], place.startsWith("front") ? "sound" : "beside", (s) => s[place].load / 1000),
      ),
      leftOut: ["a line ends where a wheel lifts; bands stand at the figures"],
    },
    {
      figure: "lean",
      title: "lean of the body, °, left side up is +",
      unit: "deg",
      lines: [line("lean", "sound", (s) => degreesFromRadians(s.roll))],
      leftOut: [],
    },
  ];
}
