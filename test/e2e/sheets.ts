import type { Sheet } from "./look-at-sheet.ts";

/** The invented family the sheets are looked at with. */
export const FAMILY = "ouzel-saloon";
export const TORN_BUSH = "rear-left/trailing-link/inner-bush";
const LEAKED_BUSH = "front-left/lower-arm/rear-bush";

const family = `/families/${FAMILY}`;
const marked = `marks=${TORN_BUSH}:torn-3~front-left/lower-arm/ball-joint:loose-1~front-right/lower-arm/rear-bush:torn-2`;

const signs = "marks=rear-left/damper/leak:seen-film-below-seat,rebounds-differ~rear-left/tyre/tread:seen-one-shoulder";

/** Sheets of a car line besides its underside and geometry. */
export const CAR_LINE_SHEETS: readonly Sheet[] = [
  { name: "families", path: "/families" },
  { name: "begin", path: "/families/begin" },
  { name: "family", path: family },
  { name: "family-selected", path: `${family}?at=rear/trailing-link/inner-bush` },
  { name: "family-copy-first", path: `${family}/edit` },
  { name: "match", path: `${family}/match` },
  { name: "whole-car", path: `${family}/car?motion=bend&along=-0.3` },
  { name: "bodies", path: "/layouts?at=arm-front", pressed: [".head", ".margin", "#drawing"] },
  {
    name: "bodies-firmer",
    path: "/layouts?at=arm-front&as=firmer&by=hardness&old_shore_a=55&new_shore_a=75",
    pressed: [".margin"],
  },
  {
    name: "bodies-held",
    path: "/layouts?show=hold&at=toe-link&as=loose&held=under/carrier-arm",
    pressed: [".head", ".margin", "#drawing"],
  },
];

/** The underside and its corners. */
export const UNDERSIDE_SHEETS: readonly Sheet[] = [
  { name: "underside", path: `${family}/underside` },
  { name: "underside-marked", path: `${family}/underside?${marked}&at=${TORN_BUSH}` },
  { name: "corner", path: `${family}/underside/rear-left?${marked}` },
  { name: "corner-selected", path: `${family}/underside/rear-left?${marked}&at=${TORN_BUSH}` },
  { name: "corner-signs", path: `${family}/underside/rear-left?${signs}&at=rear-left/damper/leak` },
  { name: "corner-firmer", path: `${family}/underside/rear-left?marks=${TORN_BUSH}:firmer-shore-x-65&at=${TORN_BUSH}` },
  { name: "axle", path: `${family}/underside/front` },
  {
    name: "corner-fluid-gone",
    path: `${family}/underside/front-left?marks=${LEAKED_BUSH}:fluid-gone&at=${LEAKED_BUSH}`,
  },
];

/** What a fault does, over travel, and how to hold a corner. */
export const GEOMETRY_SHEETS: readonly Sheet[] = [
  { name: "geometry", path: `${family}/geometry?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}` },
  {
    name: "geometry-steered",
    path: `${family}/geometry?at=front-left/lower-arm/rear-bush&as=torn-2&lateral_n=2000&braking_n=0`,
  },
  {
    name: "geometry-four-states",
    path: `${family}/geometry?at=${TORN_BUSH}&as=torn-3&also=firmer-2&lowered_mm=30`,
  },
  { name: "geometry-fluid-gone", path: `${family}/geometry?marks=${LEAKED_BUSH}:fluid-gone&at=${LEAKED_BUSH}` },
  { name: "geometry-nothing-marked", path: `${family}/geometry` },
  { name: "geometry-nothing-shown", path: `${family}/geometry?at=${TORN_BUSH}` },
  {
    name: "travel",
    path: `${family}/travel?corner=rear-left&torn=${TORN_BUSH}&firmer=every-rubber&firmer_by=shore-55-65&lowered_mm=30&braking_n=2000`,
    pressed: ["#drawing"],
  },
  { name: "travel-beside", path: `${family}/travel?beside=dunlin-hatch&first=camber&second=roll-centre&turn_deg=-60` },
  { name: "hold", path: `${family}/hold?at=${TORN_BUSH}&way=bar` },
];

/** Sheets that belong to no car line. */
export const PLACE_SHEETS: readonly Sheet[] = [
  { name: "today", path: "/" },
  { name: "counter", path: "/counter" },
  { name: "bench", path: "/bench" },
  { name: "tally", path: "/tally" },
  { name: "reference", path: "/reference" },
  { name: "reference-source", path: "/reference?source=workshop-scale" },
  { name: "no-such-family", path: "/families/nobody", refused: true },
  { name: "no-such-sheet", path: "/nowhere" },
];
