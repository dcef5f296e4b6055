import { formatNumber } from "../fault/format-figure.ts";

/** Never broken at the end of a line. */
const NO_BREAK = "\u00a0";

/** Whole thousands apart: "128 440". */
export const grouped = (whole: string): string => whole.replace(/\B(?=(\d{3})+(?!\d))/g, NO_BREAK);

/** A distance: "128 440 km". */
export const formatKm = (km: number): string => `${grouped(formatNumber(km, 0))} km`;
