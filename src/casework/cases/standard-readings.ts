import type { AxleName, QuantityName, Side } from "#vehicle";

/** One reading that is asked for on a car before it is lifted or with its wheels off. */
export interface StandardReading {
  readonly place: string;
  readonly axle: AxleName;
  readonly side: Side;
  readonly quantity: QuantityName;
  /** Several points of one quantity ("inner", "middle", "outer"; disc points "1" to "8"); [null] for one. */
  readonly points: readonly (string | null)[];
  readonly group: ReadingGroup;
  readonly label: string;
}

export type ReadingGroup = "heights" | "pressures" | "tread" | "pads" | "discs" | "alignment";

export const groupWords: Readonly<Record<ReadingGroup, string>> = {
  heights: "Ride height, hub centre to arch",
  pressures: "Tyre pressure, cold",
  tread: "Tread, three points",
  pads: "Pad thickness",
  discs: "Disc thickness, eight points",
  alignment: "Alignment as found",
};

const corners: readonly (readonly [AxleName, Side])[] = [
  ["front", "left"],
  ["front", "right"],
  ["rear", "left"],
  ["rear", "right"],
];

/** All standard readings in the order they are taken: heights first, before the car has been lifted. */
export function standardReadings(): readonly StandardReading[] {
  const each = (
    group: ReadingGroup,
    quantity: QuantityName,
    item: string,
    label: string,
    points: readonly (string | null)[] = [null],
  ): StandardReading[] =>
    corners.map(([axle, side]) => ({
      place: `${axle}-${side}/${item}`,
      axle,
      side,
      quantity,
      points,
      group,
      label: `${axle === "front" ? "Front" : "Rear"} ${side}, ${label}`,
    }));
  const caster = each("alignment", "caster", "alignment", "caster").filter((r) => r.axle === "front");
  return [
    ...each("heights", "ride-height", "ride-height", "height"),
    ...each("pressures", "pressure", "tyre/pressure", "pressure"),
    ...each("tread", "tread", "tyre/tread", "tread", ["inner", "middle", "outer"]),
    ...each("pads", "pad-thickness", "pads/thickness", "pads", ["inner", "outer"]),
    ...each("discs", "thickness", "disc/thickness", "disc", ["1", "2", "3", "4", "5", "6", "7", "8"]),
    ...each("alignment", "camber", "alignment", "camber"),
    ...each("alignment", "toe", "alignment", "toe"),
    ...caster,
  ];
}

/** How a quantity is shown and typed: unit, factor from SI, decimals, and between what it makes sense (SI). */
export interface QuantityForm {
  readonly label: string;
  readonly unit: string;
  /** Shown value = SI value x factor. */
  readonly factor: number;
  readonly decimals: number;
  /** A reading outside is a slip of the pen until somebody confirms it (from memory; not a limit). */
  readonly plausible: readonly [low: number, high: number];
}

const mm = 1000;
const deg = 180 / Math.PI;

export const quantityForms: Readonly<Record<QuantityName, QuantityForm>> = {
  play: { label: "Play", unit: "mm", factor: mm, decimals: 2, plausible: [0, 0.015] },
  "lost-travel": { label: "Lost travel", unit: "mm", factor: mm, decimals: 1, plausible: [0, 0.03] },
  "crack-depth": { label: "Crack depth", unit: "mm", factor: mm, decimals: 1, plausible: [0, 0.03] },
  "sleeve-offset": { label: "Sleeve off centre", unit: "mm", factor: mm, decimals: 1, plausible: [0, 0.02] },
  thickness: { label: "Thickness", unit: "mm", factor: mm, decimals: 2, plausible: [0.004, 0.045] },
  "thickness-variation": { label: "Thickness variation", unit: "mm", factor: mm, decimals: 3, plausible: [0, 0.0005] },
  "run-out": { label: "Run-out", unit: "mm", factor: mm, decimals: 3, plausible: [0, 0.002] },
  "pad-thickness": { label: "Pad thickness", unit: "mm", factor: mm, decimals: 1, plausible: [0, 0.02] },
  tread: { label: "Tread", unit: "mm", factor: mm, decimals: 1, plausible: [0, 0.012] },
  pressure: { label: "Pressure", unit: "bar", factor: 1e-5, decimals: 1, plausible: [0.5e5, 4.5e5] },
  "ride-height": { label: "Ride height", unit: "mm", factor: mm, decimals: 0, plausible: [0.2, 0.6] },
  camber: { label: "Camber", unit: "°", factor: deg, decimals: 2, plausible: [-6 / deg, 4 / deg] },
  toe: { label: "Toe", unit: "°", factor: deg, decimals: 2, plausible: [-3 / deg, 3 / deg] },
  caster: { label: "Caster", unit: "°", factor: deg, decimals: 2, plausible: [-2 / deg, 14 / deg] },
  "boiling-point": { label: "Boiling point", unit: "°C", factor: 1, decimals: 0, plausible: [90, 320] },
  "slide-force": { label: "Force to slide", unit: "N", factor: 1, decimals: 0, plausible: [0, 600] },
  "drag-torque": { label: "Drag", unit: "N·m", factor: 1, decimals: 1, plausible: [0, 60] },
  "leak-grade": { label: "Leak grade", unit: "", factor: 1, decimals: 0, plausible: [0, 4] },
  rebounds: { label: "Rebounds", unit: "", factor: 1, decimals: 0, plausible: [0, 8] },
  gap: { label: "Gap", unit: "mm", factor: mm, decimals: 1, plausible: [0, 0.05] },
  "free-height": { label: "Free height", unit: "mm", factor: mm, decimals: 0, plausible: [0.02, 0.6] },
};
