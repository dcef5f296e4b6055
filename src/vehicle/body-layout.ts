import type { DirectionIn, Metres, PointIn, Radians } from "#quantity";

/** The word for the car body among the names of bodies: it does not move. */
export const CAR_BODY = "car-body";

/** A named point carried by a body (or by the car body). */
export interface LayoutEnd {
  readonly on: string;
  /** Name of the point. */
  readonly at: string;
}

/** A direction at design: given, or from one named point to another. */
export type LayoutAxis =
  | { readonly kind: "given"; readonly vector: DirectionIn<"vehicle"> }
  | { readonly kind: "between"; readonly from: string; readonly to: string };

/** What holds two bodies together beside links. */
export type LayoutJoint =
  /** One point of both bodies stays one point: 3 constraints. */
  | {
      readonly kind: "ball";
      readonly name: string;
      readonly label?: string | undefined;
      readonly between: readonly [string, string];
      readonly at: string;
    }
  /**
   * A bush turns freely. It holds its point across its axis (2 constraints) and, unless it slides, along it (1 more);
   * the axis is carried by the first of the two bodies.
   */
  | {
      readonly kind: "bush";
      readonly name: string;
      /** What people call it; absent: its name. */
      readonly label?: string | undefined;
      readonly between: readonly [string, string];
      readonly at: string;
      readonly axis: LayoutAxis;
      readonly slides: boolean;
    }
  /** A line fixed in one body keeps passing through a point of another: 2 constraints. */
  | {
      readonly kind: "slider";
      readonly name: string;
      readonly label?: string | undefined;
      readonly line: { readonly on: string; readonly from: string; readonly to: string };
      readonly through: LayoutEnd;
    };

/** Two points of two bodies that keep their distance: 1 constraint. */
export interface LayoutLink {
  readonly name: string;
  readonly label?: string | undefined;
  readonly from: LayoutEnd;
  readonly to: LayoutEnd;
  /** The end on the car body moves with the rack. */
  readonly steered: boolean;
}

/** A spring or damper: its length is the distance of its ends. */
export interface LayoutStrut {
  readonly from: LayoutEnd;
  readonly to: LayoutEnd;
}

/**
 * One wheel suspension as bodies and joints, LEFT side (y > 0), design position, metres and radians: the form in which a
 * layout that no code knows is given as data. 6 freedoms a body less one for the travel must be held.
 */
export interface BodyLayout {
  readonly name: string;
  readonly points: Readonly<Record<string, PointIn<"vehicle">>>;
  /** Moving bodies. */
  readonly bodies: readonly string[];
  readonly wheel: {
    /** The body that carries the wheel. */
    readonly on: string;
    readonly centre: PointIn<"vehicle">;
    readonly camber: Radians;
    readonly toe: Radians;
    readonly loadedRadius: Metres;
  };
  readonly joints: readonly LayoutJoint[];
  readonly links: readonly LayoutLink[];
  readonly spring?: LayoutStrut;
  readonly damper?: LayoutStrut;
}

/** How often a joint holds two bodies together. */
export function constraintsOf(joint: LayoutJoint): number {
  switch (joint.kind) {
    case "ball":
      return 3;
    case "bush":
      return joint.slides ? 2 : 3;
    case "slider":
      return 2;
  }
}

/** Freedoms that are left: 6 a body less what joints and links hold; 1 is a wheel that travels and does nothing else. */
export function countFreedoms(layout: Pick<BodyLayout, "bodies" | "joints" | "links">): number {
  return 6 * layout.bodies.length - layout.links.length - layout.joints.reduce((sum, j) => sum + constraintsOf(j), 0);
}
