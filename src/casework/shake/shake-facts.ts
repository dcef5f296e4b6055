import type { CornerAssembly, Position } from "#vehicle";
import type { ShakeBand } from "./shake-band.ts";
import type { ShakeCurves } from "./shake-curves.ts";
import type { ShakeModel } from "./shake-model.ts";

/** Everything a shake is told from. */
export interface ShakeFacts {
  readonly assembly: CornerAssembly;
  readonly position: Position;
  readonly model: ShakeModel;
  readonly curves: ShakeCurves;
  readonly band: ShakeBand;
}
