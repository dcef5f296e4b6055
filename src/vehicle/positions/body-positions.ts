import { CAR_BODY, type LayoutJoint } from "../body-layout.ts";
import type { Axle, AxleBodies, AxleBodyPlace } from "../family.ts";
import type { PositionDraft } from "./draft.ts";
import { idWord, jointWord, positionKind, sentenceCase } from "./joint-words.ts";

/**
 * Every joint of a linkage of several bodies: both ends of each link, named after it ("toe-link/inner-bush"), and each joint,
 * named after the arm it sits on ("carrier-arm/arm-front"). Position.joint names the part; a joint's end is "inner".
 */
export function bodyPositions({ bodies, wheel }: Axle & { readonly bodies: AxleBodies }): PositionDraft[] {
  const { layout, places } = bodies;
  return places.flatMap((place): PositionDraft[] => {
    const link = layout.links.find(({ name }) => name === place.part);
    const joint = layout.joints.find(({ name }) => name === place.part);
    const draft =
      link && place.end
        ? linkEnd(place, link[place.end].on, link.label)
        : joint
          ? jointOn(place, joint, layout.wheel.on)
          : null;
    const point = link && place.end ? link[place.end].at : joint ? pointOf(joint) : "";
    const at = layout.points[point];
    return draft && at ? [{ ...draft, at, sheet: at[2] < wheel.centre[2] ? "lower" : "upper" }] : [];
  });
}

type Named = Omit<PositionDraft, "at" | "sheet">;

/** The point a joint holds. */
const pointOf = (joint: LayoutJoint): string => (joint.kind === "slider" ? joint.through.at : joint.at);

/** The joint of a place without rubber is looked at like a ball joint where it turns every way. */
function linkEnd({ part, end, joint }: AxleBodyPlace, on: string, label: string | undefined): Named {
  const which = end === "from" ? "inner" : "outer";
  const where = on === CAR_BODY ? "the body" : `the ${on.replaceAll("-", " ")}`;
  return {
    item: part,
    detail: `${which}-${idWord(joint.kind)}`,
    kind: positionKind(joint.kind),
    label: `${label ?? sentenceCase(part)}, ${joint.label ?? `${jointWord(joint.kind)} on ${where}`}`,
    joint: { link: part, end: which },
  };
}

function jointOn({ part, joint }: AxleBodyPlace, own: LayoutJoint, carrier: string): Named {
  const between = own.kind === "slider" ? [own.line.on, own.through.on] : own.between;
  const arm = between.find((body) => body !== CAR_BODY && body !== carrier);
  return {
    item: arm ?? part,
    detail: arm === undefined ? idWord(joint.kind) : part,
    kind: own.kind === "slider" ? "strut-mount" : positionKind(joint.kind),
    label: own.label ?? `${sentenceCase(arm ?? part)}, ${part.replaceAll("-", " ")}`,
    joint: { link: part, end: "inner" },
  };
}
