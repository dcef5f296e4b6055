import { cornerOf, type Family, type Grade, type Position } from "#vehicle";
import type { FaultEffect } from "../fault-effect.ts";
import { isDrawnSpeed } from "../shake/shake-curves.ts";
import type { Shake } from "../shake.ts";
import type { AppraisalMemory } from "./appraisal-memory.ts";
import type { SymptomEntry } from "./documents.ts";
import { feltSpeed } from "./felt-fluid-loss.ts";
import type { PlaceFinding } from "./place-finding.ts";
import { gradeOfSign, SIGNS_OF_FLUID_GONE, SIGNS_OF_TORN, tornGrade } from "./signs.ts";

/** What a fault does to the car, as far as the linkage and the rubber can be asked. */
export interface WhatItDoes {
  /** A joint that is torn or loose, by the balance of the corner; null where there is none, or no answer. */
  readonly effect: FaultEffect | null;
  /** A hydraulic bush that has lost its fluid, by its shake over the road speed; null where there is none, or no answer. */
  readonly shake: Shake | null;
  /** Why there is no shake where fluid was lost: "... not on file"; null where there is one, or none was lost. */
  readonly noShake: string | null;
}

/** What a torn joint is told under: a firm stop at this wheel (common practice, no source). */
const USUAL_BRAKING = 2000;
/** Below this grade a finding is not worth telling what it does. */
const TOLD_FROM = 2;

/** Of a place that is sound, or that no computation knows. */
export const NOTHING_DONE: WhatItDoes = { effect: null, shake: null, noShake: null };

/**
 * What is wrong at a place does, where it is worn enough to be told and the linkage knows the joint.
 * @param complaints what the owner came with: a shake is told at the speed at which it is felt
 */
export function findWhatItDoes(
  family: Family,
  position: Position,
  finding: PlaceFinding,
  complaints: readonly SymptomEntry[],
  memory: AppraisalMemory,
): WhatItDoes {
  const corner = cornerOf(position);
  if (!position.joint || !corner || (finding.grade ?? 0) < TOLD_FROM) return NOTHING_DONE;
  const fault = faultAt(position, finding);
  const condition = { contactRise: 0, rack: 0, braking: USUAL_BRAKING, lateral: 0, drive: 0 };
  const effect = fault && memory.effect(family, { corner, position: position.id, fault, condition });
  if (!hasLostFluid(position, finding)) return { ...NOTHING_DONE, effect };
  const speed = feltSpeed(complaints, position.axle);
  const asked = { corner, position: position.id };
  const answer = memory.shake(family, speed !== null && isDrawnSpeed(speed) ? { ...asked, speed } : asked);
  return "shake" in answer
    ? { effect, shake: answer.shake, noShake: null }
    : { effect, shake: null, noShake: noShakeWords(answer.findings[0]?.needed ?? "") };
}

const noShakeWords = (needed: string): string =>
  `It has lost its fluid: it looks whole and gives as before, and what damped the wheel is gone. How far the wheel then shakes is not computed; it would take ${needed}.`;

const hasLostFluid = (position: Position, { looks }: PlaceFinding): boolean =>
  position.kind === "hydraulic-bush" && (looks?.signs ?? []).some((sign) => SIGNS_OF_FLUID_GONE.includes(sign));

/** Play of a ball joint that was read, or a rubber that is torn by what an eye saw or by a reading out of its limit. */
function faultAt({ kind }: Position, { looks, reasons }: PlaceFinding) {
  if (kind === "ball-joint") {
    const play = looks?.readings.find((r) => r.quantity === "play");
    return play && play.value > 0 ? ({ kind: "loose", play: play.value } as const) : null;
  }
  const seen = (looks?.signs ?? []).filter((sign) => SIGNS_OF_TORN.includes(sign));
  const grades: readonly Grade[] = [
    ...seen.flatMap((sign) => gradeOfSign(kind, sign) ?? []),
    ...reasons.flatMap((reason) => (reason.about === null ? [] : [reason.grade])),
  ];
  const worst = grades.toSorted((a, b) => b - a)[0] ?? 0;
  const torn = worst < TOLD_FROM ? null : tornGrade(worst === 4 ? 3 : worst);
  return torn && ({ kind: "torn", grade: torn } as const);
}

/** What a finding does to the car in sentences, the lost fluid first; "" where nothing is computed. */
export const doesWords = ({ effect, shake, noShake }: WhatItDoes): string =>
  [shake?.sentence ?? noShake, effect?.sentence].filter((words) => words != null && words !== "").join(" ");
