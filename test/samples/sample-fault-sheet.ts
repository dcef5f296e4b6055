import type { FaultSheetFacts } from "#report";
import { sampleEffect, sampleGhosts } from "./sample-effect.ts";
import { sampleFamily } from "./sample-family.ts";

/** An invented sheet for galleries and tests. */
export const sampleFacts: FaultSheetFacts = {
  family: sampleFamily,
  effect: sampleEffect,
  date: "12 March 2026",
  by: "I. Marden",
  ghosts: sampleGhosts,
};
