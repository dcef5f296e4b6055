import type { Finding } from "#numeric";
import { familyFinding } from "./family-finding.ts";
import type { LooseAxle } from "./loose-axle.ts";

/** A wheel that can only travel is held five times. */
const NEEDED = 5;

/** Whether the parts of an axle are those of its layout, and hold the wheel exactly five times. */
export function checkConstraints(axle: LooseAxle): Finding[] {
  if (!axle.hasLinks || axle.layout === undefined) return [];
  const misplaced = partsOfLayout(axle);
  return [
    ...layoutForAxle(axle),
    ...misplaced,
    ...(misplaced.length === 0 ? constraintCount(axle) : []),
    ...armLegs(axle),
    ...steeredLink(axle),
  ];
}

function layoutForAxle(axle: LooseAxle): Finding[] {
  return axle.name === "front" && axle.layout === "trailing-arm"
    ? [
        familyFinding(
          "layout-not-for-axle",
          "front.layout",
          '"trailing-arm"',
          "five-link, double-wishbone or strut",
          "A trailing arm holds a rear wheel only.",
        ),
      ]
    : [];
}

function partsOfLayout(axle: LooseAxle): Finding[] {
  const { name, layout } = axle;
  const found: Finding[] = [];
  const extra = (part: "strut" | "trailing_arm"): void => {
    found.push(
      familyFinding(
        "part-not-in-layout",
        `${name}.${part}`,
        axle.raw[part],
        `no ${part} where the layout is ${layout}`,
        "Leave the part out or name the other layout.",
      ),
    );
  };
  const missing = (part: "strut" | "trailing_arm"): void => {
    found.push(
      familyFinding(
        "part-missing-in-layout",
        `${name}.${part}`,
        "nothing",
        `the ${part} the layout is named after`,
        "Give the part or name the other layout.",
      ),
    );
  };
  if (axle.hasStrut && layout !== "strut") extra("strut");
  if (axle.hasTrailingArm && layout !== "trailing-arm") extra("trailing_arm");
  if (!axle.hasStrut && layout === "strut") missing("strut");
  if (!axle.hasTrailingArm && layout === "trailing-arm") missing("trailing_arm");
  return found;
}

function constraintCount(axle: LooseAxle): Finding[] {
  const links = axle.links.length;
  const byArm = axle.trailingArm ? (axle.trailingArm.hasFreeAxis ? 2 : 3) : 0;
  const byStrut = axle.hasStrut ? 2 : 0;
  const count = links + byStrut + byArm;
  if (count === NEEDED) return [];
  const parts = [
    `${links} ${links === 1 ? "link" : "links"}`,
    ...(byStrut ? ["a strut (2)"] : []),
    ...(byArm ? [`a trailing arm ${byArm === 3 ? "held in all three directions (3)" : "with a free axis (2)"}`] : []),
  ];
  const surplus = count - NEEDED;
  const words = Math.abs(surplus) === 1 ? "one" : String(Math.abs(surplus));
  return [
    familyFinding(
      surplus > 0 ? "too-many-constraints" : "too-few-constraints",
      `${axle.name}.links`,
      `${count} constraints: ${parts.join(" and ")}, ${words} too ${surplus > 0 ? "many" : "few"}`,
      `${NEEDED} constraints: ${neededParts(axle)}`,
      countHint(axle, surplus),
    ),
  ];
}

function neededParts(axle: LooseAxle): string {
  switch (axle.layout) {
    case "strut":
      return "three links (tie rod included) and a strut";
    case "trailing-arm":
      return "two links and a trailing arm held in all three directions, or three links and a trailing arm with a free axis";
    default:
      return "five links, tie rod or toe link included";
  }
}

function countHint(axle: LooseAxle, surplus: number): string {
  if (axle.trailingArm && surplus === 1 && !axle.trailingArm.hasFreeAxis)
    return "Give the trailing arm a free_axis, or leave one link out.";
  if (axle.trailingArm && surplus === -1 && axle.trailingArm.hasFreeAxis) return "Leave free_axis out, or add a link.";
  if (surplus === 1) return "Leave one link out: with it the wheel could not travel.";
  if (surplus === -1) return "A link is missing: without it the wheel would not be held.";
  return "";
}

function armLegs(axle: LooseAxle): Finding[] {
  const legs = new Map<string, number[]>();
  axle.links.forEach(({ arm }, index) => {
    if (arm !== undefined) legs.set(arm, [...(legs.get(arm) ?? []), index]);
  });
  const found = [...legs].flatMap(([arm, indices]) =>
    indices.length === 1
      ? [
          familyFinding(
            "arm-of-one-link",
            `${axle.name}.links[${indices[0]}].arm`,
            arm,
            "two links with this arm",
            "An arm has two legs; a link by itself has no arm.",
          ),
        ]
      : [],
  );
  if (axle.layout === "double-wishbone" && legs.size === 0) {
    found.push(
      familyFinding(
        "layout-without-arm",
        `${axle.name}.links`,
        "no link with an arm",
        "at least one arm of two links",
        "Give both legs of a wishbone the same arm; five separate links are the layout five-link.",
      ),
    );
  }
  return found;
}

function steeredLink(axle: LooseAxle): Finding[] {
  return axle.name === "front" && axle.links.length > 0 && !axle.links.some((link) => link.steered)
    ? [
        familyFinding(
          "no-steered-link",
          "front.links",
          "no link with steered: true",
          "one steered link",
          "Say steered: true in the tie rod.",
        ),
      ]
    : [];
}
