import {
  type Anchor,
  type Direction,
  GROUND,
  type LineDirection,
  type Measure,
  pointsOfDirection,
} from "../mechanism.ts";

/** A direction of the design: one of the triad of another. */
export interface About {
  readonly direction: Direction;
  readonly which: 0 | 1 | 2;
}

/** How far a rubber is turned from design about one direction, radians. */
export type TurnMeasure =
  /**
   * Part about a direction, carried by `carrier`, of the shortest turn of a line as `carrier` sees it: of the line between two
   * anchors, or of one that a body carries.
   */
  | {
      readonly kind: "swing";
      readonly line:
        | { readonly a: Anchor; readonly b: Anchor }
        | { readonly on: number; readonly along: LineDirection };
      readonly carrier: number;
      readonly about: About;
    }
  /** Part about a direction of the rotation vector of the second body as the first one sees it. */
  | { readonly kind: "twist"; readonly between: readonly [number, number]; readonly about: About };

/**
 * Offset of a point (b) from a line through another (a), across it along a direction `toward` which the body of b carries; the
 * direction is tilted with the line the shortest way, so that a turn of the line's body about it changes nothing.
 */
export interface SeatedOffset {
  readonly kind: "seated-offset";
  readonly a: Anchor;
  readonly b: Anchor;
  readonly line: LineDirection;
  readonly toward: About;
}

/** Anything between bodies that can be elastic. */
export type ElasticMeasure = Measure | TurnMeasure | SeatedOffset;

/** The line of a swing at design. */
export const designLineOf = ({ line }: Extract<TurnMeasure, { kind: "swing" }>): LineDirection =>
  "along" in line ? line.along : { kind: "between", from: line.a.point, to: line.b.point };

/** The design points a measure depends on. */
export function pointsOfElastic(m: ElasticMeasure): readonly number[] {
  switch (m.kind) {
    case "distance":
      return [m.a.point, m.b.point];
    case "offset":
      return [m.a.point, m.b.point, ...pointsOfDirection(m.direction)];
    case "seated-offset":
      return [m.a.point, m.b.point, ...pointsOfDirection(m.line), ...pointsOfDirection(m.toward.direction)];
    case "swing":
      return [...pointsOfDirection(designLineOf(m)), ...pointsOfDirection(m.about.direction)];
    case "twist":
      return pointsOfDirection(m.about.direction);
  }
}

/** Whether a measure is a turn: a moment and not a force belongs to it. */
export const isTurn = (m: ElasticMeasure): m is TurnMeasure => m.kind === "swing" || m.kind === "twist";

/** The bodies a measure changes with. */
export function bodiesOf(m: TurnMeasure | SeatedOffset): readonly number[] {
  const all =
    m.kind === "twist"
      ? m.between
      : m.kind === "seated-offset"
        ? [m.a.body, m.b.body]
        : [m.carrier, ...("on" in m.line ? [m.line.on] : [m.line.a.body, m.line.b.body])];
  return all.filter((body) => body !== GROUND);
}
