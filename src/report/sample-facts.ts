import { sampleEffect, sampleFamily, sampleGhosts } from "#drawing";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";

/** An invented sheet for galleries and tests. */
export const sampleFacts: FaultSheetFacts = {
  family: sampleFamily,
  effect: sampleEffect,
  date: "12 March 2026",
  by: "I. Marden",
  ghosts: sampleGhosts,
};
