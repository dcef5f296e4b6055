import { expect, it } from "vitest";
import { computeSuspects } from "#engines/diagnosis";
import { buildQuestion } from "../../src/casework/suspects/suspect-question.ts";
import { symptoms } from "../../src/casework/suspects/symptom-table.ts";
import { sumOverSubsets } from "../reference/diagnosis/every-subset.ts";

it.each(["pulls-under-braking", "clunk-over-bumps-rear"])(
  "sums over every subset agree where a sign is certain: %s",
  (id) => {
    const complaint = symptoms.filter((s) => s.id === id);
    const first = complaint[0]?.causes[0]?.[0];
    const last = complaint[0]?.causes.at(-1)?.[0];
    const { model, observation, known } = buildQuestion(
      complaint,
      new Map(),
      (cause) => (cause.id === first || cause.id === last ? "there" : "not there"),
      (cause) => cause.id === first,
    );
    const answer = computeSuspects(model, observation);
    if (answer.kind === "impossible") throw new Error("impossible");
    const sums = sumOverSubsets(model, observation);
    expect(known.length).toBeGreaterThan(3);
    for (const { cause, cures, there } of answer.suspects) {
      const i = model.causes.findIndex((c) => c.id === cause);
      expect(cures).toBeCloseTo(sums.cures[i] ?? Number.NaN, 12);
      expect(there).toBeCloseTo(sums.there[i] ?? Number.NaN, 12);
    }
    const thereOf = (cause: string | undefined): number => answer.suspects.find((s) => s.cause === cause)?.there ?? 0;
    expect(thereOf(first)).toBeGreaterThan(0.99);
    expect(thereOf(first)).toBeGreaterThan(thereOf(last));
  },
);
