import { type Metres, metresFromMm, mmFromMetres } from "#quantity";

/** Rim width as a share of the tyre width: common practice, no source. */
const RIM_SHARE = 0.85;
/** Half an inch in tenths of a millimetre. */
const HALF_INCH_TENTHS = 127;

/** Offset of a rim nobody has read, from its middle outward to the mounting face: common practice, no source. */
export const usualRimOffset: Metres = 0.045;

/** Width between the bead seats of a rim nobody has read: 0.85 of the tyre width, to the nearest half inch. */
export function usualRimWidth(tyreWidth: Metres): Metres {
  const halfInches = Math.round((RIM_SHARE * mmFromMetres(tyreWidth) * 10) / HALF_INCH_TENTHS);
  return metresFromMm((halfInches * HALF_INCH_TENTHS) / 10);
}
