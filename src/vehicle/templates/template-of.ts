import type { AxleName, LayoutName } from "../family.ts";
import type { AxleTemplate } from "./axle-template.ts";
import { doubleWishboneFront } from "./double-wishbone-front.ts";
import { fiveLinkFront } from "./five-link-front.ts";
import { fiveLinkRear } from "./five-link-rear.ts";
import { strutFront } from "./strut-front.ts";
import { trailingArmRear } from "./trailing-arm-rear.ts";

/** Every template there is; one linkage each. */
export const axleTemplates: readonly AxleTemplate[] = [
  fiveLinkFront,
  doubleWishboneFront,
  strutFront,
  fiveLinkRear,
  trailingArmRear,
];

/** The template of a layout on an axle, or null where there is none. */
export function templateOf(axle: AxleName, layout: LayoutName): AxleTemplate | null {
  return axleTemplates.find((template) => template.axle === axle && template.layout === layout) ?? null;
}
