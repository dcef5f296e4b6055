import type { ProgrammeSolver } from "#engines/planning";
import type { Family } from "#vehicle";
import { computeFaultEffect } from "../fault/compute-fault-effect.ts";
import type { FaultEffect, FaultQuestion } from "../fault-effect.ts";
import { computeShake } from "../shake/compute-shake.ts";
import type { ShakeQuestion } from "../shake.ts";
import { type CarSuspects, findSuspects } from "../suspects/visit-suspects.ts";
import type { SuspectWord, SymptomEntry } from "./documents.ts";
import type { PlaceFinding } from "./place-finding.ts";
import { createRememberingSolver } from "./remembering-solver.ts";

/** Answers that take a while, kept for as long as nothing they hang on has changed. */
export interface AppraisalMemory {
  /** null where the question cannot be computed. */
  effect(family: Family, question: FaultQuestion): FaultEffect | null;
  shake(family: Family, question: ShakeQuestion): ReturnType<typeof computeShake>;
  suspects(
    entries: readonly SymptomEntry[],
    findings: readonly PlaceFinding[],
    said: readonly SuspectWord[],
  ): CarSuspects;
  /** The solver with what it has solved before. */
  solver(solver: ProgrammeSolver): ProgrammeSolver;
}

/** An empty memory; it holds the answers about one family at a time. */
export function createMemory(): AppraisalMemory {
  let known = "";
  const effects = new Map<string, FaultEffect | null>();
  const shakes = new Map<string, ReturnType<typeof computeShake>>();
  const solver = createRememberingSolver();
  let suspected: { readonly key: string; readonly answer: CarSuspects } | null = null;
  const begin = (family: Family): void => {
    const text = JSON.stringify(family);
    if (text === known) return;
    known = text;
    effects.clear();
    shakes.clear();
  };
  return {
    solver,
    effect: (family, question) => {
      begin(family);
      const key = JSON.stringify(question);
      const before = effects.get(key);
      if (before !== undefined) return before;
      const answer = computeFaultEffect(family, question);
      const effect = "effect" in answer ? answer.effect : null;
      effects.set(key, effect);
      return effect;
    },
    shake: (family, question) => {
      begin(family);
      const key = JSON.stringify(question);
      const answer = shakes.get(key) ?? computeShake(family, question);
      shakes.set(key, answer);
      return answer;
    },
    suspects: (entries, findings, said) => {
      const key = JSON.stringify([entries, said, findings.map((f) => [f.place, f.grade, f.found, f.reasons])]);
      if (suspected?.key !== key) suspected = { key, answer: findSuspects(entries, findings, said) };
      return suspected.answer;
    },
  };
}
