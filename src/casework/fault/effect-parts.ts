import type { Vector } from "#numeric";
import { mmFromMetres, perDegreeFromPerRadian, perMmFromNewtonsPerMetre } from "#quantity";
import { type CornerAssembly, type CornerJoint, type CornerPoint, isAssumed } from "#vehicle";
import { partWords, pointWords, rubberWords } from "../bodies/bodies-words.ts";
import type { EffectPart } from "../fault-effect.ts";
import { type CornerKnown, onAskedSide } from "./corner-model.ts";
import { formatNumber, writtenDecimals } from "./format-figure.ts";
import { originWords, percent } from "./phrases.ts";

const sentenceCase = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
const EXACT = "taken as exact";
const TEMPLATE = "from the template, taken as exact";

/** Every hard point and rate a corner is computed from, on the asked side, in the order of its links. */
export function listParts(model: CornerKnown): readonly EffectPart[] {
  return [...pointParts(model), ...rateParts(model)];
}

const mm = (metres: number, most: number): string => {
  const value = mmFromMetres(metres);
  return formatNumber(value, Math.min(most, writtenDecimals(value)));
};

/** "x −2272, y 590.5, z 286.5 mm" */
const placeWords = ([x, y, z]: Vector): string => `x ${mm(x, 2)}, y ${mm(y, 2)}, z ${mm(z, 2)} mm`;

const knownPoint = ({ sd, origin }: CornerPoint): string =>
  `standard deviation ${sd.map((one) => mm(one, 2)).join(", ")} mm; ${originWords[origin] ?? origin}`;

/** What every end of the linkage is called, with the number of its point. */
function endsOf({
  links,
  strut,
  trailingArm,
  bodies,
  points,
}: CornerAssembly): readonly { label: string; point: number }[] {
  if (bodies) return points.map(({ name }, point) => ({ label: sentenceCase(pointWords(bodies.layout, name)), point }));
  return [
    ...links.flatMap(({ label, inner, outer }) => [
      { label: `${label}, inner end`, point: inner.point },
      { label: `${label}, outer end`, point: outer.point },
    ]),
    ...(strut
      ? [
          { label: "Strut top", point: strut.top.point },
          { label: "Strut, point on its axis", point: strut.axisPoint.point },
        ]
      : []),
    ...(trailingArm ? [{ label: "Trailing arm, front bush", point: trailingArm.bush.point }] : []),
  ];
}

function pointParts(model: CornerKnown): readonly EffectPart[] {
  const { assembly } = model;
  const ends = endsOf(assembly);
  const at = (place: Vector): string => placeWords(onAskedSide(model, place));
  const hard = assembly.points.map((point, i): EffectPart => {
    const names = [...new Set(ends.filter((end) => end.point === i).map(({ label }) => label))];
    return { kind: "point", label: names.join(" and "), value: at(point.at), known: knownPoint(point) };
  });
  const { wheel, spring } = assembly;
  const scaled = assembly.rung === "scaled";
  const exact = (label: string, place: Vector): EffectPart => ({
    kind: "point",
    label,
    value: at(place),
    known: scaled ? TEMPLATE : EXACT,
  });
  return [
    ...hard,
    ...(assembly.bodies
      ? []
      : [exact("Spring, end on the body", spring.body), exact("Spring, moving end", spring.seatAt)]),
    exact("Wheel centre", wheel.centre),
  ];
}

const perMm = (rate: number): string => {
  const value = perMmFromNewtonsPerMetre(rate);
  return formatNumber(value, Math.min(1, writtenDecimals(value)));
};

function rateParts(model: CornerKnown): readonly EffectPart[] {
  const { links, strut, trailingArm, spring, bodies } = model.assembly;
  const joint = (label: string, one: CornerJoint): readonly EffectPart[] => {
    if (one.radial === null) return [];
    const direction = (v: Vector): string =>
      onAskedSide(model, v)
        .map((part) => formatNumber(part, 2))
        .join(", ");
    const { voided, conical, torsional } = one;
    const value = [
      one.axial === null || one.axis === null
        ? `${perMm(one.radial)} N/mm ${voided ? "across" : "in every direction"}`
        : `across ${perMm(one.radial)} N/mm, along ${perMm(one.axial)} N/mm; axis ${direction(one.axis)}`,
      ...(voided ? [`through its voids ${perMm(voided.rate)} N/mm; voids ${direction(voided.through)}`] : []),
      ...(conical === null ? [] : [`against tilting ${formatNumber(perDegreeFromPerRadian(conical), 1)} N·m/°`]),
      ...(torsional === null ? [] : [`against twisting ${formatNumber(perDegreeFromPerRadian(torsional), 1)} N·m/°`]),
    ].join("; ");
    const known = one.rateSdShare === 0 ? "" : `standard deviation ${percent(one.rateSdShare)} %; `;
    return [{ kind: "rate", label, value, known: `${known}${originWords[one.rateOrigin] ?? one.rateOrigin}` }];
  };
  const exact = (label: string, rate: number, known = EXACT): EffectPart => ({
    kind: "rate",
    label,
    value: `${perMm(rate)} N/mm`,
    known,
  });
  const { assembly } = model;
  const member = assembly.rung === "scaled" ? TEMPLATE : EXACT;
  return [
    ...links.flatMap(({ label, innerJoint, outerJoint, memberRate }) => [
      ...joint(`${label}, inner joint`, innerJoint),
      ...joint(`${label}, outer joint`, outerJoint),
      ...(memberRate === null ? [] : [exact(`${label}, the bare member along its length`, memberRate, member)]),
    ]),
    ...(bodies
      ? bodies.places.flatMap((place) => joint(sentenceCase(rubberWords(bodies.layout, place)), place.joint))
      : []),
    ...(bodies
      ? bodies.members.map(({ link, rate }) =>
          exact(`${sentenceCase(partWords(bodies.layout, link))}, the bare member along its length`, rate),
        )
      : []),
    ...(strut ? joint("Strut, top mount", strut.topMount) : []),
    ...(trailingArm ? joint("Trailing arm, front bush", trailingArm.bushJoint) : []),
    exact("Spring", spring.rate, isAssumed(assembly, `${assembly.axle}-spring-rate`) ? TEMPLATE : EXACT),
  ];
}
