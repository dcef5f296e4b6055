import type { Figure } from "../fault-effect.ts";

type Bandless = Omit<Figure, "u" | "range" | "band" | "signSure" | "settle">;

/** A figure no band is computed for; its relation has to say so. */
export const bandlessFigure = (said: Bandless): Figure => ({
  ...said,
  u: 0,
  range: null,
  band: null,
  signSure: true,
  settle: null,
});
