import type { WheelState } from "#engines/linkage";
import { type Finding, mirrorY, type Vector } from "#numeric";
import type { Family, Position, TornShare } from "#vehicle";
import type { FaultEffect, FaultQuestion, Firmness, RubberFault, WheelPose } from "../fault-effect.ts";
import { checkQuestion, findPosition } from "./check-question.ts";
import { type CornerKnown, jointOf } from "./corner-model.ts";
import { type CornerOfCar, cornerOfCar } from "./corner-of-car.ts";
import { listParts } from "./effect-parts.ts";
import { computeCurves } from "./fault-curves.ts";
import { buildFigures } from "./fault-figures.ts";
import { faultInWords } from "./fault-in-words.ts";
import { type FaultStates, middleShare, solvePair } from "./fault-pair.ts";
import { loadOf, type RepairState, unloaded } from "./fault-states.ts";
import { describeEffect } from "./fault-words.ts";
import { firmnessOf } from "./firmer-rubber.ts";
import { narrowingWords } from "./narrow.ts";
import { beyondUsableWords } from "./usable-force.ts";

/**
 * What a fault at one position does to its wheel at a condition: toe(faulty) - toe(sound), both balanced at the stated
 * force with the contact height held, with bands from hard points, rates and torn share; as figures, curves and words.
 * Returns findings where the question cannot be computed. Accuracy: that of linkage.compliance.
 */
export function computeFaultEffect(
  family: Family,
  question: FaultQuestion,
): { effect: FaultEffect } | { findings: readonly Finding[] } {
  const position = findPosition(family, question);
  if (!position)
    return {
      findings: [
        {
          code: "unknown-position",
          path: "position",
          got: question.position,
          needed: "the id of a position of this family",
          hint: "Ids read like rear-left/trailing-link/inner-bush.",
        },
      ],
    };
  const model = cornerOfCar(family, question.corner);
  const findings = checkQuestion(question, position, model);
  if (findings.length > 0) return { findings };
  const states = makeStates(model, position, question);
  if (!states.sound.carries)
    return {
      findings: [
        {
          code: "cannot-carry",
          path: "",
          got: "a spring that does not carry the wheel",
          needed: "a spring whose length changes when the wheel rises",
          hint: "Look at the spring's points in the family sheet.",
        },
      ],
    };
  const loaded = solvePair(states, states.load);
  const free = solvePair(states, unloaded(states.load));
  if (!loaded || !free)
    return {
      findings: [
        {
          code: "no-equilibrium",
          path: "condition",
          got: "no balance under this force, at this height, with the rack there",
          needed: "a condition the corner can take",
          hint: "Lower the force, or bring the height nearer to ride height and the rack nearer to its middle.",
        },
      ],
    };
  const figures = buildFigures(states, loaded, free);
  const settleOf = (key: string): string | null => figures.all.find((f) => f.key === key)?.settle ?? null;
  const { rises, curves, ends } = computeCurves(states, {
    toe: settleOf("toe-change"),
    camber: settleOf("camber-change"),
  });
  const words = describeEffect(states, figures, family.invented);
  const { tornShare, firmness } = states;
  return {
    effect: {
      question,
      axle: position.axle,
      rung: model.assembly.rung,
      invented: family.invented,
      parts: listParts(model),
      sound: poseOf(model, loaded.sound.state),
      faulty: poseOf(model, loaded.faulty.state),
      tornShare: tornShare && { low: tornShare.low, high: tornShare.high, origin: tornShare.origin },
      firmness,
      inWords: faultInWords(question.fault),
      rises,
      curves,
      headline: figures.headline,
      figures: figures.all,
      ...words,
      narrows: narrowingWords(states, loaded, figures.headline),
      beyondTyre: beyondUsableWords(family, question.corner, question.condition),
      others: loaded.others.map((o) => poseOf(model, o)),
      travels: ends.map((e) => poseOf(model, e)),
    },
  };
}

function makeStates(model: CornerOfCar, position: Position, question: FaultQuestion): FaultStates {
  const { fault } = question;
  const joint = jointOf(model.assembly, position);
  const tornShare = fault.kind === "torn" ? (joint?.tornShare[fault.grade] ?? null) : null;
  const soft = (factor: number): RepairState => model.softAt([position], factor);
  const firmness = fault.kind === "firmer" ? firmnessOf(fault, joint) : null;
  const range = tornShare ?? firmness;
  const faulty =
    fault.kind === "loose" ? model.looseAt(position, fault.play) : soft(middleFactor(fault, tornShare, firmness));
  return {
    model,
    position,
    question,
    tornShare,
    firmness,
    load: loadOf(question.condition, model.mirrored),
    sound: model.sound(),
    faulty,
    ends: range ? [soft(range.low), soft(range.high)] : [],
  };
}

/** The factor on the rates that a fault is computed with in its middle. */
function middleFactor(
  fault: Exclude<RubberFault, { kind: "loose" }>,
  tornShare: TornShare | null,
  firmness: Firmness | null,
): number {
  if (fault.kind === "torn") return tornShare ? middleShare(tornShare) : 1;
  return "factor" in fault ? fault.factor : (firmness?.factor ?? 1);
}

/** The pose of a balance on the asked side of the car. */
export function poseOf({ assembly, mirrored }: CornerKnown, { attitude, pose }: WheelState): WheelPose {
  const turn = mirrored ? -1 : 1;
  const side = (v: Vector): Vector => [...(mirrored ? mirrorY(v) : v)];
  const rotationOf = (body: number): readonly number[] =>
    Array.from(pose.r.subarray(9 * body, 9 * body + 9), (x, i) => ((i % 3 === 1) !== (i >= 3 && i < 6) ? turn * x : x));
  const shiftOf = (body: number): Vector =>
    side([0, 1, 2].map((c) => pose.t[3 * body + c] as number) as [number, number, number]);
  const names = assembly.bodies && [
    assembly.bodies.layout.wheel.on,
    ...assembly.bodies.layout.bodies.filter((name) => name !== assembly.bodies?.layout.wheel.on),
  ];
  return {
    toe: attitude.toe,
    camber: attitude.camber,
    spin: attitude.spin,
    centre: side(attitude.centre),
    contact: side(attitude.contact),
    rotation: rotationOf(0),
    ...(names && {
      bodies: Object.fromEntries(names.map((name, k) => [name, { shift: shiftOf(k), rotation: rotationOf(k) }])),
    }),
  };
}
