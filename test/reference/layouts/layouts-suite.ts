import type { Suite } from "../suites.ts";
import { scoreLayouts } from "./layout-rows.ts";

export const layoutsSuite: Suite = {
  title: "Layouts as bodies and joints",
  about:
    "Suspensions given as data, none known to the code: planar four-bars of two moving bodies against their closed form, a lower carrier arm with integral link against a second continuation written for the test, and the corners of the rigid reference with their arms as bodies against the same with arms as pairs of links. A rear axle of an invented car line, its rubber torn, firmer and loose, as bodies against the built-in layout.",
  score: scoreLayouts,
};
