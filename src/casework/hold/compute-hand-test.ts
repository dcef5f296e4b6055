import { type Finding, normalFrom, seededRandom } from "#numeric";
import { axleAndSide, type CornerAssembly, type Family, positionsOf, type TornShare } from "#vehicle";
import { refuseBodies } from "../fault/bodies-refused.ts";
import { jointOf, modelCorner } from "../fault/corner-model.ts";
import { listParts } from "../fault/effect-parts.ts";
import { middleShare } from "../fault/fault-pair.ts";
import type { HandQuestion, HandTest } from "../hold.ts";
import { disturbCorner } from "../sampling/disturb-corner.ts";
import { checkHandQuestion } from "./check-hand-question.ts";
import type { HandFacts } from "./hand-facts.ts";
import { buildHandFigures } from "./hand-figures.ts";
import { computeMovement, type HandFault, type Movement } from "./hand-movement.ts";
import { describeHandTest } from "./hand-words.ts";

const SEED = 20_261_129;
/** Corners drawn for the bands of one hand test. */
export const HAND_DRAWS = 120;

/**
 * Movement for a stated force or moment of a hand at a joint, sound and with a fault, with bands, and whether a person tells
 * the difference. Findings where the joint, the state and the means do not go together.
 */
export function computeHandTest(
  family: Family,
  question: HandQuestion,
): { readonly test: HandTest } | { readonly findings: readonly Finding[] } {
  const position = positionsOf(family).find(({ id }) => id === question.position);
  const refused = refuseBodies(
    family,
    [axleAndSide(question.corner).axle],
    "the page A layout from a file tells what a hand moves",
  );
  if (refused.length > 0) return { findings: refused };
  const model = modelCorner(family, question.corner);
  const { assembly } = model;
  const { fault, held, way } = question;
  const findings = checkHandQuestion(question, position ?? null, assembly);
  if (findings.length > 0 || !position) return { findings };
  const tornShare = fault.kind === "torn" ? (jointOf(assembly, position)?.tornShare[fault.grade] ?? null) : null;
  const at = (a: CornerAssembly, share: number): Movement | null => {
    const one: HandFault = fault.kind === "torn" ? { factor: share, play: 0 } : { factor: 1, play: fault.play };
    return computeMovement(a, held, position, way, one);
  };
  const movement = at(assembly, tornShare ? middleShare(tornShare) : 1);
  if (!movement) return { findings: [NOT_HELD] };
  const ends = tornShare ? [at(assembly, tornShare.low), at(assembly, tornShare.high)] : [];
  const [low, high] = ends;
  const facts: HandFacts = {
    assembly,
    position,
    question,
    tornShare,
    movement,
    ends: low && high ? [low, high] : null,
    drawn: drawMovements(assembly, tornShare, at),
  };
  const figures = buildHandFigures(facts);
  return {
    test: {
      question,
      rung: assembly.rung,
      invented: family.invented,
      parts: listParts(model),
      headline: figures.headline,
      figures: figures.all,
      ...describeHandTest(facts, figures),
    },
  };
}

/** The same test on corners drawn as they may be, the torn share anywhere in its range. */
function drawMovements(
  assembly: CornerAssembly,
  tornShare: TornShare | null,
  at: (a: CornerAssembly, share: number) => Movement | null,
): readonly Movement[] {
  const random = seededRandom(SEED);
  const draw = normalFrom(random);
  return Array.from({ length: HAND_DRAWS }).flatMap(() => {
    const share = tornShare ? tornShare.low * (tornShare.high / tornShare.low) ** random() : 1;
    return at(disturbCorner(assembly, draw), share) ?? [];
  });
}

const NOT_HELD: Finding = {
  code: "cannot-carry",
  path: "held",
  got: "a corner that nothing carries so, or joints that leave a move free",
  needed: "a state the corner can be held in",
  hint: "Choose another way of holding the car.",
};
