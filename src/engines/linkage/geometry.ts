import type { DirectionIn, Metres, PointIn, Radians, Share } from "#quantity";

/** A link between the body (inner) and the knuckle (outer), both ends spherical for the kinematics. */
export interface LinkGeometry {
  readonly name: string;
  readonly inner: PointIn<"vehicle">;
  readonly outer: PointIn<"vehicle">;
  readonly steered: boolean;
}

/** Where the moving end of a spring or damper sits. */
export type SeatGeometry =
  | { readonly on: "knuckle"; readonly moving: PointIn<"vehicle"> }
  | { readonly on: "link"; readonly link: string; readonly fraction: Share }
  | { readonly on: "arm"; readonly links: readonly [string, string]; readonly moving: PointIn<"vehicle"> };

export interface SpringGeometry {
  readonly body: PointIn<"vehicle">;
  readonly seat: SeatGeometry;
}

/** One corner at design position, LEFT side (y > 0), metres and radians. A right corner is mirrored before and after. */
export interface CornerGeometry {
  readonly wheel: {
    readonly centre: PointIn<"vehicle">;
    readonly camber: Radians;
    readonly toe: Radians;
    readonly loadedRadius: Metres;
  };
  readonly links: readonly LinkGeometry[];
  /** The line through both points is fixed in the knuckle and keeps passing through the top. */
  readonly strut?: { readonly top: PointIn<"vehicle">; readonly axisPoint: PointIn<"vehicle"> };
  /** A point of the knuckle held in the body, free along the axis if one is given. */
  readonly trailingArm?: { readonly bush: PointIn<"vehicle">; readonly freeAxis?: DirectionIn<"vehicle"> };
  readonly spring?: SpringGeometry;
  readonly damper?: SpringGeometry;
}
