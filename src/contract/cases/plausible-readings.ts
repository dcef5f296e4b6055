import type { QuantityName } from "#vehicle";

/** Between what a reading of a car lies, in the unit it is sent in; not a limit, only a net for slips of the pen. */
export interface PlausibleRange {
  readonly low: number;
  readonly high: number;
  readonly origin: "from memory" | "invented";
}

const remembered = (low: number, high: number): PlausibleRange => ({ low, high, origin: "from memory" });
const invented = (low: number, high: number): PlausibleRange => ({ low, high, origin: "invented" });

/** The range of every quantity; a reading outside is taken only where its sender confirms it. */
export const plausibleReadings: Readonly<Record<QuantityName, PlausibleRange>> = {
  play: remembered(0, 15),
  "lost-travel": remembered(0, 30),
  "crack-depth": remembered(0, 30),
  "sleeve-offset": remembered(0, 20),
  thickness: remembered(4, 45),
  "thickness-variation": remembered(0, 0.5),
  "run-out": remembered(0, 2),
  "pad-thickness": remembered(0, 20),
  tread: remembered(0, 12),
  pressure: remembered(0.5, 4.5),
  "ride-height": remembered(200, 600),
  camber: remembered(-6, 4),
  toe: remembered(-3, 3),
  caster: remembered(-2, 14),
  "boiling-point": remembered(90, 320),
  "slide-force": invented(0, 600),
  "drag-torque": invented(0, 60),
  "leak-grade": invented(0, 4),
  rebounds: remembered(0, 8),
  gap: remembered(0, 50),
  "free-height": remembered(20, 600),
};
