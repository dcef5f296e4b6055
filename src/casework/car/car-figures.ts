import { STEEL_SHEAR } from "#engines/linkage";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { bandOfAngles } from "../fault/change-band.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { findSettlingReading, isSignSure } from "../fault/settle.ts";
import type { Figure } from "../fault-effect.ts";
import { spreadOf } from "../sampling/spread.ts";
import { bandlessFigure } from "./bandless-figure.ts";
import { isBarDoubted, twistOf } from "./bar-twist.ts";
import type { CarFacts, WheelName } from "./car-facts.ts";
import { carMotionForm } from "./car-motions.ts";
import { cornerKey } from "./corner-rows.ts";
import type { RackReading } from "./rack-spread.ts";

const SOURCE = "docs/method/linkage.md, section 15, checked in docs/verification.md";
const WHEELS: readonly { readonly name: WheelName; readonly words: string; readonly axle: "front" | "rear" }[] = [
  { name: "frontLeft", words: "front left", axle: "front" },
  { name: "frontRight", words: "front right", axle: "front" },
  { name: "rearLeft", words: "rear left", axle: "rear" },
  { name: "rearRight", words: "rear right", axle: "rear" },
];

/** All figures of the car where it is asked for. */
export function buildCarFigures(facts: CarFacts): readonly Figure[] {
  const { question } = facts;
  return question.motion.kind === "rack"
    ? steeringFigures(facts)
    : [...wheelFigures(facts), ...facts.antis, ...barFigures(facts)];
}

function inputsOf({ question }: CarFacts): Figure["inputs"] {
  const { family, motion } = question;
  const form = carMotionForm(motion.kind);
  const decimals = form.unit === "°" ? 2 : 0;
  return [
    {
      label: form.name,
      value: `${formatNumber(form.show(motion.by), decimals)} ${form.unit}, ${motion.by >= 0 ? form.high : form.low}`,
    },
    { label: "Wheelbase", value: `${formatNumber(mmFromMetres(family.wheelbase), 0)} mm` },
    { label: "Front share of the mass", value: `${formatNumber(100 * family.frontWeightShare, 0)} %` },
  ];
}

function wheelFigures(facts: CarFacts): readonly Figure[] {
  const { question, rest, there, bands } = facts;
  const leans = question.motion.kind === "roll";
  return WHEELS.filter(({ name }) => leans || name.endsWith("Left")).flatMap(({ name, words, axle }) => [
    bandlessFigure({
      key: cornerKey(name, "travel"),
      label: `Travel against the body, bump, ${leans ? words : `${axle} wheels`}`,
      value: mmFromMetres(there[name].travel),
      unit: "mm",
      rung: question.family[axle].rung,
      inputs: inputsOf(facts),
      relation:
        "by Newton until its lowest point touches the ground; it follows from the motion nearly alone, so no band",
      source: SOURCE,
    }),
    ...(["toe", "camber"] as const).map((key): Figure => {
      const at = bands[axle].solve(there[name].travel);
      const change = "foldAt" in at ? null : at[key === "toe" ? "toeChange" : "camberChange"];
      const value = degreesFromRadians(there[name][key] - rest[name][key]);
      const u = degreesFromRadians(change?.sd ?? 0);
      const sure = isSignSure(value, u);
      const model = facts[axle];
      const label = leans ? words : axle === "front" ? "front wheels" : "rear wheels";
      return {
        key: `${name}-${key}`,
        label: `${key === "toe" ? "Toe" : "Camber against the ground"} from standing, ${label}`,
        value,
        unit: "deg",
        u,
        range: null,
        band: bandOfAngles([{ value, sd: u }]) as [number, number],
        rung: question.family[axle].rung,
        inputs: [
          ...inputsOf(facts),
          {
            label: "Travel of this wheel against the body",
            value: `${formatNumber(mmFromMetres(there[name].travel), 1)} mm`,
          },
        ],
        relation:
          "travel of each wheel by Newton until its lowest point touches the ground; band: that of the corner at this travel, exact derivatives; rigid linkage",
        source: SOURCE,
        signSure: sure,
        settle: sure || change === null ? null : findSettlingReading(bands[axle].jets, change.jet, model.assembly),
      };
    }),
  ]);
}

function barFigures(facts: CarFacts): readonly Figure[] {
  const { question, there } = facts;
  const { family } = question;
  return (["front", "rear"] as const).flatMap((axle): readonly Figure[] => {
    const [left, right] = axle === "front" ? [there.frontLeft, there.frontRight] : [there.rearLeft, there.rearRight];
    const bar = twistOf(family, axle, facts[axle], { left: left.travel, right: right.travel });
    const diameter = family[axle].bar?.diameter;
    if (bar === null || diameter === undefined || question.motion.kind !== "roll" || question.motion.by === 0)
      return [];
    if (isBarDoubted(bar, question.motion.by)) return [];
    const figure = (key: string, label: string, unit: "deg" | "N", value: number): Figure =>
      bandlessFigure({
        key: `${axle}-${key}`,
        label,
        value,
        unit,
        rung: family[axle].rung,
        inputs: [
          ...inputsOf(facts),
          { label: "Bar", value: `solid, ${formatNumber(mmFromMetres(diameter), 1)} mm` },
          { label: "Shear modulus", value: `${formatNumber(STEEL_SHEAR / 1e9, 0)} GPa, textbook, from memory` },
        ],
        relation:
          "turn of its levers against each other; force from twist and bending of its whole path, ends to bushes, as a thin rod; rubber of its bushes and links left out, so less in truth; no band",
        source: SOURCE,
      });
    return [
      figure("twist", `Twist of the ${axle} bar`, "deg", degreesFromRadians(Math.abs(bar.twist))),
      figure("force", `What the ${axle} bar takes off one wheel and puts on the other`, "N", Math.abs(bar.leftWheel)),
    ];
  });
}

function steeringFigures(facts: CarFacts): readonly Figure[] {
  const { question, rack } = facts;
  if (rack === null || rack.there === null) return [];
  const { there, drawn } = rack;
  const figure = (key: string, label: string, of: (read: RackReading) => number): Figure => {
    const value = degreesFromRadians(of(there));
    const all = drawn.map((read) => degreesFromRadians(of(read)));
    const spread = all.length < 2 ? { low: value, high: value, sd: 0 } : spreadOf(all);
    const signSure = question.motion.by === 0 || (spread.low > 0 === value > 0 && spread.high > 0 === value > 0);
    return {
      key,
      label,
      value,
      unit: "deg",
      u: spread.sd,
      range: null,
      band: [spread.low, spread.high],
      rung: question.family.front.rung,
      inputs: inputsOf(facts),
      relation:
        "cot outer - cot inner = width between the steering axes over wheelbase; turns counted from the wheels' own angle straight ahead; rigid linkage; band by sampling the hard points",
      source: "check-values-geometry; docs/method/linkage.md, section 15",
      signSure,
      settle: signSure ? null : "Read both front wheels on turn plates.",
    };
  };
  return [
    figure("inner", "Inner wheel turns", ({ inner }) => inner),
    figure("outer", "Outer wheel turns", ({ outer }) => outer),
    figure("correct", "Outer wheel would turn, exact condition", ({ correctOuter }) => correctOuter),
    figure("error", "Outer wheel beyond the exact angle", ({ error }) => error),
    ...(["frontLeft", "frontRight"] as const).map((place) =>
      figure(
        cornerKey(place, "camber"),
        `Camber against the ground from straight ahead, ${place === "frontLeft" ? "front left" : "front right"}`,
        ({ camber }) => camber[place],
      ),
    ),
  ];
}
