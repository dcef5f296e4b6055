import { useCallback, useMemo } from "react";
import type { EyePlace } from "#drawing";
import { useDragged } from "./use-dragged.ts";

/** From where a corner in space is seen, as it stands in an address. */
export interface EyeSearch {
  readonly turn_deg?: number;
  readonly tilt_deg?: number;
}

const USUAL_EYE: EyePlace = { turn: 35, tilt: 20 };

const degreesWithin = (value: unknown, low: number, high: number): number | null => {
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof number === "number" && number >= low && number <= high ? number : null;
};

/** Reads the eye of an address; what cannot be read is left out. */
export const readEyeSearch = (search: Record<string, unknown>): EyeSearch => {
  const [turn, tilt] = [degreesWithin(search.turn_deg, -180, 180), degreesWithin(search.tilt_deg, -30, 90)];
  return { ...(turn === null ? {} : { turn_deg: turn }), ...(tilt === null ? {} : { tilt_deg: tilt }) };
};

/** The eye of an address while it is dragged, and how to place it. */
export const useEye = (
  search: EyeSearch,
  write: (eye: Required<EyeSearch>) => void,
): readonly [EyePlace, (eye: EyePlace) => void] => {
  const addressed = useMemo(
    (): EyePlace => ({ turn: search.turn_deg ?? USUAL_EYE.turn, tilt: search.tilt_deg ?? USUAL_EYE.tilt }),
    [search.turn_deg, search.tilt_deg],
  );
  const writeEye = useCallback(({ turn, tilt }: EyePlace) => write({ turn_deg: turn, tilt_deg: tilt }), [write]);
  return useDragged(addressed, writeEye);
};
