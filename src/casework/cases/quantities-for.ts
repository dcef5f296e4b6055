import type { Position, PositionKind, QuantityName } from "#vehicle";

/** What can be read at a kind of place beside its signs (common practice, no source). */
const byKind: Readonly<Partial<Record<PositionKind, readonly QuantityName[]>>> = {
  bush: ["lost-travel", "crack-depth", "sleeve-offset"],
  "hydraulic-bush": ["lost-travel", "crack-depth", "sleeve-offset"],
  "ball-joint": ["play"],
  "strut-mount": ["gap"],
  spring: ["free-height"],
  damper: ["rebounds"],
  bearing: ["play"],
  "hub-face": ["run-out"],
  "bar-link": ["play"],
  "parking-brake": ["drag-torque"],
  "brake-fluid": ["boiling-point"],
  wheel: ["run-out"],
  "steering-play": ["lost-travel"],
};

/** Where several places share one thing, each has its own quantity: "disc/thickness" and "disc/runout". */
const byDetail: Readonly<Record<string, readonly QuantityName[]>> = {
  "disc/thickness": ["thickness"],
  "disc/variation": ["thickness-variation"],
  "disc/runout": ["run-out"],
  "pads/thickness": ["pad-thickness"],
  "pads/taper": ["pad-thickness"],
  "caliper/guides": ["slide-force"],
  "tyre/tread": ["tread"],
  "tyre/pressure": ["pressure"],
};

/** Quantities that can be read at a place, the telling one first; none where an eye must do. */
export const quantitiesFor = ({ kind, detail }: Pick<Position, "kind" | "detail">): readonly QuantityName[] =>
  byDetail[`${kind}/${detail ?? ""}`] ?? byKind[kind] ?? [];
