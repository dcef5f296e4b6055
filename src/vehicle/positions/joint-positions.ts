import { isOfBodies } from "../axle-bodies.ts";
import type { Axle, Joint, Link } from "../family.ts";
import { bodyPositions } from "./body-positions.ts";
import type { PositionDraft } from "./draft.ts";
import { idWord, jointWord, positionKind, sentenceCase } from "./joint-words.ts";

/** Name by which Position.joint points at the rubber of the strut's top mount (end "inner"). No link may be called so. */
export const STRUT_TOP = "strut-top";
/** Name by which Position.joint points at the trailing arm's front bush (end "inner"). No link may be called so. */
export const TRAILING_ARM = "trailing-arm";

/** Every joint of the linkage of one side: link ends, arm bushes and ball joints, trailing-arm bush. The strut top is a top mount. */
export function jointPositions(axle: Axle): PositionDraft[] {
  if (isOfBodies(axle)) return bodyPositions(axle);
  const drafts: PositionDraft[] = [];
  if (axle.trailingArm) {
    const { bush, bushJoint } = axle.trailingArm;
    drafts.push({
      item: TRAILING_ARM,
      detail: "front-bush",
      kind: positionKind(bushJoint.kind),
      label: `Trailing arm, ${bushJoint.label ?? `front ${jointWord(bushJoint.kind)}`}`,
      at: bush.at,
      sheet: "lower",
      joint: { link: TRAILING_ARM, end: "inner" },
    });
  }
  const armsDone = new Set<string>();
  for (const link of axle.links) {
    if (link.arm === undefined) {
      drafts.push(linkEnd(link, "inner"), linkEnd(link, "outer"));
    } else if (!armsDone.has(link.arm)) {
      armsDone.add(link.arm);
      drafts.push(
        ...armPositions(
          link.arm,
          axle.links.filter((other) => other.arm === link.arm),
        ),
      );
    }
  }
  return drafts;
}

function linkEnd(link: Link, end: "inner" | "outer"): PositionDraft {
  const joint = end === "inner" ? link.innerJoint : link.outerJoint;
  const point = end === "inner" ? link.inner : link.outer;
  return {
    item: link.name,
    detail: `${end}-${idWord(joint.kind)}`,
    kind: positionKind(joint.kind),
    label: `${link.label}, ${joint.label ?? `${end} ${jointWord(joint.kind)}`}`,
    at: point.at,
    sheet: link.sheet,
    joint: { link: link.name, end },
  };
}

/** A rigid arm of two (or more) links: each inner end by itself from the front backward, the shared outer joint once. */
function armPositions(arm: string, links: readonly Link[]): PositionDraft[] {
  const label = sentenceCase(arm);
  const fromTheFront = [...links].sort((a, b) => b.inner.at[0] - a.inner.at[0]);
  const drafts = fromTheFront.map((link, index): PositionDraft => {
    const place = placeWord(index, fromTheFront.length);
    return {
      item: arm,
      detail: `${place}-${idWord(link.innerJoint.kind)}`,
      kind: positionKind(link.innerJoint.kind),
      label: `${label}, ${link.innerJoint.label ?? `${place} ${jointWord(link.innerJoint.kind)}`}`,
      at: link.inner.at,
      sheet: link.sheet,
      joint: { link: link.name, end: "inner" },
    };
  });
  const [first] = links;
  if (first) drafts.push(armOuterJoint(arm, label, first, first.outerJoint));
  return drafts;
}

/** The one outer joint of an arm; Position.joint names the arm's first link and stands for that end of all its links. */
function armOuterJoint(arm: string, label: string, first: Link, joint: Joint): PositionDraft {
  const isBall = joint.kind === "ball-joint";
  return {
    item: arm,
    detail: isBall ? "ball-joint" : `outer-${idWord(joint.kind)}`,
    kind: positionKind(joint.kind),
    label: `${label}, ${joint.label ?? (isBall ? "ball joint" : `outer ${jointWord(joint.kind)}`)}`,
    at: first.outer.at,
    sheet: first.sheet,
    joint: { link: first.name, end: "outer" },
  };
}

function placeWord(index: number, count: number): string {
  if (index === 0) return "front";
  return index === count - 1 ? "rear" : "middle";
}
