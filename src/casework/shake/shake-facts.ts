import type { Metres } from "#quantity";
import type { PreparedShake } from "./prepare-shake.ts";

/** Everything a shake is told from. */
export interface ShakeFacts extends Pick<PreparedShake, "assembly" | "position" | "model" | "curves" | "band"> {
  /** Thickness variation of the disc, peak to peak. */
  readonly variation: Metres;
  /** Index of the speed at which the driver feels it; null: nobody said. */
  readonly felt: number | null;
}
