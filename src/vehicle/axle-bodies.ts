import type { CornerBodies, CornerJoint } from "./corner.ts";
import type { Axle, AxleBodies, Joint } from "./family.ts";

/** The bodies of an axle in the form the linkage computes with; its joints already made numbers. */
export function assembleBodies(
  { layout, places, members }: AxleBodies,
  numbers: (joint: Joint) => CornerJoint,
): CornerBodies {
  return {
    layout,
    places: places.map(({ part, end, joint }) => ({ part, end, joint: numbers(joint) })),
    members: members.map((member) => ({ ...member })),
  };
}

/** Whether an axle's linkage is one of several bodies, which some pages do not compute with. */
export const isOfBodies = (axle: Axle): axle is Axle & { readonly bodies: AxleBodies } => axle.bodies !== undefined;
