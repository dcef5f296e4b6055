import type { PointIn } from "#quantity";
import type { AxleName, Side } from "./family.ts";

/** What kind of thing sits at a position; decides which faults can be marked and how it is drawn. */
export type PositionKind =
  | "bush"
  | "hydraulic-bush"
  | "ball-joint"
  | "strut-mount"
  | "spring"
  | "damper"
  | "bump-stop"
  | "bearing"
  | "hub-face"
  | "bar-link"
  | "bar-bush"
  | "boot"
  | "drive-shaft"
  | "hose"
  | "disc"
  | "pads"
  | "caliper"
  | "brake-fluid"
  | "parking-brake"
  | "brake-result"
  | "tyre"
  | "wheel"
  | "wheel-bolts"
  | "rack"
  | "rack-mount"
  | "steering-play"
  | "subframe-mount"
  | "differential-mount"
  | "level-sensor"
  | "shield"
  | "body";

/** A place on a car where something can be looked at. Its id reads "front-left/lower-rear-link/inner-bush". */
export interface Position {
  readonly id: string;
  readonly axle: AxleName;
  /** null: belongs to the axle as a whole. */
  readonly side: Side | null;
  readonly item: string;
  readonly detail: string | null;
  readonly kind: PositionKind;
  /** Sentence case, without the corner: "Lower rear link, inner bush". */
  readonly label: string;
  /** Where it lies (both sides given as they are: the right has negative y); null where it lies nowhere (brake fluid). */
  readonly at: PointIn<"vehicle"> | null;
  readonly sheet: "lower" | "upper";
  /** The joint of the linkage it is, if it is one whose rubber the linkage computes with. */
  readonly joint: { readonly link: string; readonly end: "inner" | "outer" } | null;
}
