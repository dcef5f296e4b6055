import type { CornerElasticity, CornerGeometry, ElasticFault, EndRate, SpringGeometry } from "#engines/linkage";
import { subtract, type Vector } from "#numeric";
import { perRadianFromPerDegree, radiansFromDegrees } from "#quantity";
import { directionOfClocking } from "#vehicle";
import type { WireCorner, WireFault, WireRubber, WireSeat } from "./linkage-schema.ts";

type Point = readonly [number, number, number];

/** Millimetres to metres; a right corner is mirrored, so that everything inside is a left one. */
export const pointFromWire = (p: Point, side: "left" | "right"): Vector => [
  p[0] / 1000,
  (side === "right" ? -p[1] : p[1]) / 1000,
  p[2] / 1000,
];
/** Metres to millimetres, mirrored back for a right corner. */
export const pointToWire = (p: Vector, side: "left" | "right"): Point => [
  p[0] * 1000,
  sideways(p[1], side) * 1000,
  p[2] * 1000,
];
/** A y component: mirrored for a right corner, without a negative zero. */
export const sideways = (y: number, side: "left" | "right"): number => (side === "right" && y !== 0 ? -y : y);
/** A direction, mirrored for a right corner. */
export const directionFromWire = (a: Point, side: "left" | "right"): Vector => [
  a[0],
  side === "right" ? -a[1] : a[1],
  a[2],
];

/** The corner's geometry in SI, as a left corner. The wire form must have been checked. */
export function geometryFromWire(
  wire: Omit<WireCorner, "side"> & { side: "left" | "right" },
  spring?: WireSeat,
  damper?: WireSeat,
): CornerGeometry {
  const { side } = wire;
  const at = (p: Point): Vector => pointFromWire(p, side);
  const links = wire.links.map((l) => ({
    name: l.name,
    inner: at(l.inner_mm),
    outer: at(l.outer_mm),
    steered: l.steered,
  }));
  const seatOf = (seat: WireSeat): SpringGeometry => ({
    body: at(seat.body_mm),
    seat: seatFromWire(seat, links, side),
  });
  return {
    wheel: {
      centre: at(wire.wheel.centre_mm),
      camber: radiansFromDegrees(wire.wheel.camber_deg),
      toe: radiansFromDegrees(wire.wheel.toe_deg),
      loadedRadius: wire.wheel.loaded_radius_mm / 1000,
    },
    links,
    ...(wire.strut ? { strut: { top: at(wire.strut.top_mm), axisPoint: at(wire.strut.axis_point_mm) } } : {}),
    ...(wire.trailing_arm
      ? {
          trailingArm: {
            bush: at(wire.trailing_arm.bush_mm),
            ...(wire.trailing_arm.free_axis ? { freeAxis: directionFromWire(wire.trailing_arm.free_axis, side) } : {}),
          },
        }
      : {}),
    ...(spring ? { spring: seatOf(spring) } : {}),
    ...(damper ? { damper: seatOf(damper) } : {}),
  };
}

function seatFromWire(seat: WireSeat, links: CornerGeometry["links"], side: "left" | "right"): SpringGeometry["seat"] {
  const moving = seat.moving_mm ? pointFromWire(seat.moving_mm, side) : null;
  if (typeof seat.on !== "string") return { on: "arm", links: [seat.on[0], seat.on[1]], moving: moving ?? [0, 0, 0] };
  if (seat.on === "knuckle") return { on: "knuckle", moving: moving ?? [0, 0, 0] };
  if (seat.fraction !== undefined) return { on: "link", link: seat.on, fraction: seat.fraction };
  const link = links.find((l) => l.name === seat.on);
  return { on: "link", link: seat.on, fraction: link && moving ? shareAlong(link.inner, link.outer, moving) : 0 };
}

/** Where the foot of a point on a line lies, as a share of the line from its start. */
function shareAlong(from: Vector, to: Vector, point: Vector): number {
  const d = [0, 1, 2].map((i) => (to[i] as number) - (from[i] as number));
  const p = [0, 1, 2].map((i) => (point[i] as number) - (from[i] as number));
  const dd = d.reduce((s, x) => s + x * x, 0);
  return d.reduce((s, x, i) => s + x * (p[i] as number), 0) / dd;
}

/** Rates of an end; `axis` on the wire's side is that of a mount that gives none. */
function rateFromWire(r: WireRubber, side: "left" | "right", axis: Point | undefined = r.axis): EndRate {
  return {
    radial: r.radial_n_per_mm * 1000,
    ...(r.axial_n_per_mm !== undefined ? { axial: r.axial_n_per_mm * 1000 } : {}),
    ...(r.axis ? { axis: directionFromWire(r.axis, side) } : {}),
    ...(r.voided_n_per_mm !== undefined && r.clocking_deg !== undefined && axis
      ? {
          voided: {
            rate: r.voided_n_per_mm * 1000,
            through: directionFromWire(directionOfClocking(axis, radiansFromDegrees(r.clocking_deg)), side),
          },
        }
      : {}),
    ...(r.conical_nm_per_deg !== undefined ? { conical: perRadianFromPerDegree(r.conical_nm_per_deg) } : {}),
    ...(r.torsional_nm_per_deg !== undefined ? { torsional: perRadianFromPerDegree(r.torsional_nm_per_deg) } : {}),
  };
}

export interface WireElasticity {
  readonly rate_n_per_mm: number;
  readonly rubber: readonly WireRubber[];
  readonly members: readonly { readonly link: string; readonly n_per_mm: number }[];
  readonly wheel_load_n: number;
}

/** What is elastic, in SI; `strut`, where there is one, gives its top mount its axis. */
export function elasticityFromWire(
  wire: WireElasticity,
  side: "left" | "right",
  strut: { readonly top_mm: Point; readonly axis_point_mm: Point } | undefined,
): CornerElasticity {
  const line = strut && subtract(strut.top_mm, strut.axis_point_mm);
  const strutTop = wire.rubber.find((r) => r.link === "strut_top");
  const arm = wire.rubber.find((r) => r.link === "trailing_arm");
  return {
    springRate: wire.rate_n_per_mm * 1000,
    wheelLoad: wire.wheel_load_n,
    rubber: wire.rubber
      .filter((r) => r.link !== "strut_top" && r.link !== "trailing_arm")
      .map((r) => ({ link: r.link, end: r.end ?? "inner", rate: rateFromWire(r, side) })),
    members: wire.members.map((m) => ({ link: m.link, rate: m.n_per_mm * 1000 })),
    ...(strutTop ? { strutTop: rateFromWire(strutTop, side, line) } : {}),
    ...(arm ? { trailingArm: rateFromWire(arm, side) } : {}),
  };
}

/** Faults in SI; an end that is not named is the inner one. */
export function faultsFromWire(faults: readonly WireFault[]): ElasticFault[] {
  return faults.map((f) =>
    f.kind === "soft"
      ? { kind: "soft", link: f.link, end: f.end ?? "inner", factor: f.factor }
      : { kind: "play", link: f.link, total: f.total_mm / 1000 },
  );
}
