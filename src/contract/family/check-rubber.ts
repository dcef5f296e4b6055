import type { Finding } from "#numeric";
import { checkVoidedJoint } from "./check-voided.ts";
import { familyFinding } from "./family-finding.ts";
import { direction } from "./figure-schema.ts";
import { joint, tornShare } from "./joint-schema.ts";
import { asObject, type LooseAxle, understood } from "./loose-axle.ts";
import { tornGrades } from "./read-points.ts";

/** An axis shorter than this points nowhere for sure (invented; its unit does not matter). */
const SHORTEST_AXIS = 1e-6;

/** Every joint of an axle sheet with its path, as it stands there. */
export function jointsOf(
  axle: LooseAxle,
): { readonly path: string; readonly raw: Readonly<Record<string, unknown>> }[] {
  const given: { path: string; value: unknown }[] = axle.links.flatMap(({ raw }, index) =>
    (["inner_joint", "outer_joint"] as const).map((key) => ({
      path: `${axle.name}.links[${index}].${key}`,
      value: raw[key],
    })),
  );
  given.push({ path: `${axle.name}.strut.top_mount`, value: axle.strut?.topMount });
  given.push({ path: `${axle.name}.trailing_arm.bush_joint`, value: axle.trailingArm?.bushJoint });
  return given.filter(({ value }) => value !== undefined).map(({ path, value }) => ({ path, raw: asObject(value) }));
}

/** Axes, rates and torn shares of an axle that do not fit together. */
export function checkRubber(axle: LooseAxle): Finding[] {
  const defaults = asObject(axle.raw.defaults);
  return [
    ...jointsOf(axle).flatMap(({ path, raw }) => [
      ...axisAndRates(path, raw),
      ...tornShares(`${path}.torn_share`, raw.torn_share),
      ...tornWithoutRubber(path, raw),
      ...fluidWithoutBush(path, raw),
      ...checkVoidedJoint(path, raw, axle),
    ]),
    ...tornShares(`${axle.name}.defaults.torn_share`, defaults.torn_share),
    ...freeAxisLength(axle),
  ];
}

function axisAndRates(path: string, raw: Readonly<Record<string, unknown>>): Finding[] {
  const found: Finding[] = [];
  const has = (key: string): boolean => raw[key] !== undefined;
  if (has("axial_n_per_mm") && !has("axis")) {
    found.push(
      familyFinding(
        "axial-without-axis",
        `${path}.axis`,
        "nothing",
        "the direction of the axis, [x, y, z]",
        "A rate along the axis needs the axis; a ball joint has neither.",
      ),
    );
  }
  if (has("axis") && !has("axial_n_per_mm") && has("radial_n_per_mm")) {
    found.push(
      familyFinding(
        "axis-without-axial",
        `${path}.axial_n_per_mm`,
        "nothing",
        "the rate along the axis, in newtons per millimetre",
        "An axis needs the rate along it; a ball joint has neither.",
      ),
    );
  }
  if (has("axial_n_per_mm") && !has("radial_n_per_mm")) {
    found.push(
      familyFinding(
        "axial-without-radial",
        `${path}.radial_n_per_mm`,
        "nothing",
        "the rate across the axis, in newtons per millimetre",
        "Give both rates, or none for a rigid joint.",
      ),
    );
  }
  const axis = understood(joint.shape.axis.unwrap(), raw.axis);
  if (axis && Math.hypot(...axis) < SHORTEST_AXIS) found.push(zeroAxis(`${path}.axis`, axis));
  return found;
}

function freeAxisLength(axle: LooseAxle): Finding[] {
  const axis = understood(direction, axle.trailingArm?.freeAxis);
  return axis && Math.hypot(...axis) < SHORTEST_AXIS ? [zeroAxis(`${axle.name}.trailing_arm.free_axis`, axis)] : [];
}

function zeroAxis(path: string, axis: readonly number[]): Finding {
  return familyFinding(
    "zero-length-axis",
    path,
    `[${axis.join(", ")}]`,
    "a direction, such as [1, 0, 0]",
    "Any length will do but none.",
  );
}

function tornWithoutRubber(path: string, raw: Readonly<Record<string, unknown>>): Finding[] {
  const torn = asObject(raw.torn_share);
  const isRubber = raw.kind === "bush" || raw.kind === "hydraulic-bush" || raw.kind === undefined;
  return !isRubber && Object.keys(torn).length > 0
    ? [
        familyFinding(
          "torn-share-without-rubber",
          `${path}.torn_share`,
          torn,
          `none for the kind ${String(raw.kind)}`,
          "A ball joint wears by play: it is marked loose, not torn.",
        ),
      ]
    : [];
}

/** Fluid needs a hydraulic bush around it, and a rate that it stands beside. */
function fluidWithoutBush(path: string, raw: Readonly<Record<string, unknown>>): Finding[] {
  if (raw.fluid === undefined) return [];
  const found: Finding[] = [];
  if (raw.kind !== "hydraulic-bush")
    found.push(
      familyFinding(
        "fluid-without-hydraulic-bush",
        `${path}.fluid`,
        `fluid in a ${String(raw.kind)}`,
        "the kind hydraulic-bush",
        "Only a hydraulic bush is filled; perhaps the kind is wrong.",
      ),
    );
  if (raw.radial_n_per_mm === undefined)
    found.push(
      familyFinding(
        "fluid-without-rate",
        `${path}.radial_n_per_mm`,
        "nothing",
        "the rate of the rubber across its axis, in newtons per millimetre",
        "The fluid works beside the rubber; without its rate nothing can be computed.",
      ),
    );
  return found;
}

/** Low below high in each grade, and no worse grade above a milder one. */
function tornShares(path: string, raw: unknown): Finding[] {
  const sheet = asObject(raw);
  const found: Finding[] = [];
  let milder: { readonly word: string; readonly low: number; readonly high: number } | null = null;
  for (const [word] of tornGrades) {
    const range = understood(tornShare.shape[word].unwrap(), sheet[word]);
    if (range === undefined) continue;
    const [low, high] = Array.isArray(range) ? range : [range.low_share, range.high_share];
    const shown = `${low} to ${high}`;
    if (low > high) {
      found.push(
        familyFinding(
          "torn-share-reversed",
          `${path}.${word}`,
          shown,
          "the low end first, not above the high end",
          "Swap the two.",
        ),
      );
    } else if (milder && (low > milder.low || high > milder.high)) {
      found.push(
        familyFinding(
          "torn-share-not-falling",
          `${path}.${word}`,
          shown,
          `no more than at the grade ${milder.word}: ${milder.low} to ${milder.high}`,
          "The worse a bush, the less of its rate is left.",
        ),
      );
    }
    milder = { word, low, high };
  }
  return found;
}
