import type { Metres, PointIn } from "#quantity";
import type { Axle, Brake, Wheel } from "../family.ts";
import { moved, type PositionDraft } from "./draft.ts";

/** Where marks lie on the disc as shares of its radius, on the side away from the caliper. Drawing only; invented. */
const DISC_MARKS = { thickness: 0.94, variation: 0.76, runout: 0.58, surface: 0.4 } as const;
/** Where the middle of the pads lies as a share of the disc's radius, and how far pins and piston lie from it. Drawing only; invented. */
const PAD_RADIUS_SHARE = 0.82;
const PIN_SPREAD: Metres = 0.055;
const PISTON_INBOARD: Metres = 0.055;

/** Points P16 to P23 of one side; the hose (P24) stands with the damper and hub. */
export function brakePositions(axle: Axle): PositionDraft[] {
  const { brake, wheel } = axle;
  const caliperSide = brake.caliperAt === "front" ? 1 : -1;
  const middle = discMiddle(wheel, brake);
  const radius = brake.discDiameter / 2;
  const onDisc = (share: number): PointIn<"vehicle"> => moved(middle, -caliperSide * share * radius, 0, 0);
  const atPads = moved(middle, caliperSide * PAD_RADIUS_SHARE * radius, 0, 0);
  return [
    {
      item: "disc",
      detail: "thickness",
      kind: "disc",
      label: "Brake disc, thickness",
      at: onDisc(DISC_MARKS.thickness),
      sheet: "lower",
      joint: null,
    },
    {
      item: "disc",
      detail: "variation",
      kind: "disc",
      label: "Brake disc, thickness variation",
      at: onDisc(DISC_MARKS.variation),
      sheet: "lower",
      joint: null,
    },
    {
      item: "disc",
      detail: "runout",
      kind: "disc",
      label: "Brake disc, lateral run-out",
      at: onDisc(DISC_MARKS.runout),
      sheet: "lower",
      joint: null,
    },
    {
      item: "disc",
      detail: "surface",
      kind: "disc",
      label: "Brake disc, surface",
      at: onDisc(DISC_MARKS.surface),
      sheet: "lower",
      joint: null,
    },
    {
      item: "pads",
      detail: "thickness",
      kind: "pads",
      label: "Brake pads, thickness",
      at: atPads,
      sheet: "lower",
      joint: null,
    },
    {
      item: "pads",
      detail: "taper",
      kind: "pads",
      label: "Brake pads, taper",
      at: moved(atPads, -caliperSide * 0.035, 0, 0),
      sheet: "lower",
      joint: null,
    },
    {
      item: "caliper",
      detail: "guides",
      kind: "caliper",
      label: "Caliper, guides",
      at: moved(atPads, caliperSide * PIN_SPREAD, -PISTON_INBOARD, 0.03),
      sheet: "upper",
      joint: null,
    },
    {
      item: "caliper",
      detail: "piston",
      kind: "caliper",
      label: "Caliper, piston",
      at: moved(atPads, 0, -PISTON_INBOARD, 0),
      sheet: "upper",
      joint: null,
    },
  ];
}

/** Points P32 to P35 of one side. */
export function wheelAndTyrePositions(axle: Axle): PositionDraft[] {
  const { wheel } = axle;
  const forward = wheel.freeRadius * 0.92;
  const face = wheel.rimOffset;
  return [
    {
      item: "tyre",
      detail: "tread",
      kind: "tyre",
      label: "Tyre, tread",
      at: moved(wheel.centre, forward, 0, 0),
      sheet: "lower",
      joint: null,
    },
    {
      item: "tyre",
      detail: "condition",
      kind: "tyre",
      label: "Tyre, condition and age",
      at: moved(wheel.centre, -forward, 0, 0),
      sheet: "lower",
      joint: null,
    },
    {
      item: "wheel",
      detail: "runout",
      kind: "wheel",
      label: "Wheel and tyre, run-out",
      at: moved(wheel.centre, -wheel.rimDiameter / 2, 0.4 * wheel.tyreWidth, 0),
      sheet: "upper",
      joint: null,
    },
    {
      item: "wheel-bolts",
      detail: null,
      kind: "wheel-bolts",
      label: "Wheel bolts",
      at: moved(wheel.centre, 0, face, 0),
      sheet: "upper",
      joint: null,
    },
  ];
}

/** Middle of the disc: from the mounting face (rim offset outboard of the rim's middle) inward by the hat depth. */
function discMiddle(wheel: Wheel, brake: Brake): PointIn<"vehicle"> {
  return moved(wheel.centre, 0, wheel.rimOffset - brake.hatDepth, 0);
}
