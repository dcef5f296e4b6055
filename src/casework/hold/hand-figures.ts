import { mmFromMetres, perMmFromNewtonsPerMetre } from "#quantity";
import { jointOf } from "../fault/corner-model.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { originWords, percent } from "../fault/phrases.ts";
import { SIGN_SURE } from "../fault/settle.ts";
import type { Figure } from "../fault-effect.ts";
import { spreadOf } from "../sampling/spread.ts";
import type { HandFacts } from "./hand-facts.ts";
import type { Movement } from "./hand-movement.ts";
import { heldTitle } from "./hold-words.ts";
import { wayWords } from "./way-words.ts";

const SOURCE = "docs/method/load-states.md; hand-means";
/** A movement is read to a hundredth of a millimetre at most. */
const MOVEMENT_DECIMALS = 2;

export interface HandFigures {
  readonly headline: Figure;
  readonly all: readonly Figure[];
}

/** All figures of a hand test; the first is what it is about. */
export function buildHandFigures(facts: HandFacts): HandFigures {
  const { assembly, movement, ends, drawn, question } = facts;
  const loose = question.fault.kind === "loose";
  const state = loose ? "loose" : "torn";
  const inputs = inputsOf(facts);
  const relation =
    question.way.kind === "bar"
      ? "from side to side 2 F over the rate across the axis, torn times what is left of it; play added where the bar brings more than the load"
      : "from side to side 2 r·C f, C from all rubber and members about the held state; play p adds p times what a unit push at the place read brings to the joint, where the hand brings more than the load";
  const figure = (
    key: string,
    label: string,
    unit: "mm" | "N",
    of: (m: Movement) => number,
    told: string = relation,
  ): Figure => {
    const scale = unit === "mm" ? mmFromMetres(1) : 1;
    const values = drawn.map((m) => of(m) * scale);
    const value = of(movement) * scale;
    const spread = values.length > 1 ? spreadOf(values) : null;
    const positive = values.filter((x) => x > 0).length;
    const range = ends?.map((end) => of(end) * scale).sort((a, b) => a - b);
    const sure = value === 0 || values.length === 0 || positive >= SIGN_SURE * values.length || positive === 0;
    return {
      key,
      label,
      unit,
      value,
      ...(unit === "mm" ? { decimals: MOVEMENT_DECIMALS } : {}),
      u: spread?.sd ?? 0,
      range: range !== undefined && range[0] !== range[1] ? [range[0] as number, range[1] as number] : null,
      band: spread && [Math.min(spread.low, value), Math.max(spread.high, value)],
      rung: assembly.rung,
      inputs,
      relation: `${told}; band, 95 %: ${drawn.length} draws with a fixed seed over hard points, rates and what is left of the torn one`,
      source: SOURCE,
      signSure: sure,
      settle: sure ? null : "A push at the tyre's edge, read where it is pushed, cannot have this doubt.",
    };
  };
  const headline = figure("hand-change", `Movement, ${state} less sound`, "mm", (m) => m.faulty - m.sound);
  const balance = "static balance of the rigid corner as it is held";
  return {
    headline,
    all: [
      headline,
      figure("hand-sound", "Movement, sound", "mm", (m) => m.sound),
      figure("hand-faulty", `Movement, ${state}`, "mm", (m) => m.faulty),
      ...(loose ? [figure("hand-free", "of it, free play that shows", "mm", (m) => m.free)] : []),
      figure("joint-load", "What presses the joint together", "N", (m) => m.load, balance),
      figure("hand-brings", "What the hand brings to the joint", "N", (m) => m.brings, balance),
    ],
  };
}

function inputsOf({ assembly, position, question, tornShare }: HandFacts): Figure["inputs"] {
  const joint = jointOf(assembly, position);
  const { fault } = question;
  return [
    { label: "Joint", value: position.label },
    { label: "Held", value: heldTitle(assembly, question.held).toLowerCase() },
    { label: "Hand", value: wayWords(question.way) },
    ...(joint?.radial == null
      ? []
      : [
          {
            label: "Its rate, sound",
            value: `${formatNumber(perMmFromNewtonsPerMetre(joint.radial), 0)} N/mm across, ±${percent(2 * joint.rateSdShare)} %, ${originWords[joint.rateOrigin] ?? joint.rateOrigin}`,
          },
        ]),
    ...(tornShare
      ? [
          {
            label: "Left of it, torn",
            value: `${percent(tornShare.low)} to ${percent(tornShare.high)} %, ${originWords[tornShare.origin] ?? tornShare.origin}`,
          },
        ]
      : []),
    ...(fault.kind === "loose"
      ? [
          {
            label: "Play from end to end",
            value: `${formatNumber(mmFromMetres(fault.play), 1)} mm${fault.assumed ? ", assumed" : ""}`,
          },
        ]
      : []),
  ];
}
