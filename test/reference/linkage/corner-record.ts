import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { CornerGeometry } from "#engines/linkage";
import { geometryFromWire } from "../../../src/contract/doors/linkage-reading.ts";
import { cornerObject, seatSchema } from "../../../src/contract/doors/linkage-schema.ts";

export type Triple = readonly [number, number, number];

/** A spring or damper in the form of the reference. */
export type SeatRecord =
  | { readonly kind: "knuckle"; readonly point: Triple; readonly top: Triple }
  | { readonly kind: "link"; readonly link: string; readonly fraction: number; readonly top: Triple }
  | { readonly kind: "arm"; readonly links: readonly [string, string]; readonly point: Triple; readonly top: Triple };

/** A corner in the form of the reference: mm and degrees, left side. */
export interface CornerRecord {
  readonly name: string;
  readonly axle: "front" | "rear";
  readonly wheel_center: Triple;
  readonly loaded_radius: number;
  readonly static_camber_deg: number;
  readonly static_toe_deg: number;
  readonly links: readonly {
    readonly name: string;
    readonly inner: Triple;
    readonly outer: Triple;
    readonly rack?: boolean;
  }[];
  readonly strut?: { readonly top: Triple; readonly axis_point: Triple };
  readonly trailing_arm?: { readonly front_bush: Triple; readonly free_axis: Triple | null };
  readonly steer_link: string;
  readonly spring: SeatRecord;
  readonly damper: SeatRecord;
  readonly vehicle: {
    readonly wheelbase: number;
    readonly cg_height: number;
    readonly brake_share: number;
    readonly drive_share: number;
  };
}

/** Reads a reference file of a folder beside this one. */
export function readReference<T>(file: string): T {
  return JSON.parse(readFileSync(fileURLToPath(new URL(`../${file}`, import.meta.url)), "utf8")) as T;
}

/** A spring or damper as the doors take it. */
export function seatInput(seat: SeatRecord) {
  if (seat.kind === "link") return { body_mm: seat.top, on: seat.link, fraction: seat.fraction };
  return { body_mm: seat.top, on: seat.kind === "arm" ? seat.links : "knuckle", moving_mm: seat.point };
}

/** The geometry keys of the doors for a corner of the reference. */
export function cornerInput(corner: CornerRecord) {
  return {
    links: corner.links.map((l) => ({
      name: l.name,
      inner_mm: l.inner,
      outer_mm: l.outer,
      ...(l.rack ? { steered: true } : {}),
    })),
    ...(corner.strut ? { strut: { top_mm: corner.strut.top, axis_point_mm: corner.strut.axis_point } } : {}),
    ...(corner.trailing_arm
      ? { trailing_arm: { bush_mm: corner.trailing_arm.front_bush, free_axis: corner.trailing_arm.free_axis } }
      : {}),
    wheel: {
      centre_mm: corner.wheel_center,
      camber_deg: corner.static_camber_deg,
      toe_deg: corner.static_toe_deg,
      loaded_radius_mm: corner.loaded_radius,
    },
  };
}

/** The car keys of the doors for a corner of the reference. */
export function carInput(corner: CornerRecord) {
  return {
    axle: corner.axle,
    wheelbase_mm: corner.vehicle.wheelbase,
    cg_height_mm: corner.vehicle.cg_height,
    brake_share: corner.vehicle.brake_share,
    drive_share: corner.vehicle.drive_share,
  };
}

/** The corner as the engine takes it, for what no door says. */
export function cornerGeometry(corner: CornerRecord): CornerGeometry {
  const seat = (s: SeatRecord) => seatSchema.parse(seatInput(s));
  return geometryFromWire(cornerObject().parse(cornerInput(corner)), seat(corner.spring), seat(corner.damper));
}
