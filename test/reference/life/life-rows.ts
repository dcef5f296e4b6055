import { readFileSync } from "node:fs";
import type { Life } from "#engines/planning";
import { riskOver } from "../../../src/casework/cases/remaining-life.ts";
import { type Row, relative, Score } from "../score.ts";

interface Conditional {
  readonly rows: readonly {
    readonly life: Life;
    readonly sound_at: number;
    readonly further: number;
    readonly probability: number;
  }[];
}

const { rows } = JSON.parse(readFileSync(new URL("./conditional.json", import.meta.url), "utf8")) as Conditional;

/** Chances that a part which has lasted so far does not last a further distance. */
export function scoreLife(): readonly Row[] {
  const score = new Score("life, conditional", "life-conditional");
  for (const { life, sound_at, further, probability } of rows) {
    const remaining = { life, ageKm: sound_at, ageFrom: "odometer", sound: true, source: "" } as const;
    score.compare(`${life.family} probability`, riskOver(remaining, further), probability, relative(1e-11));
  }
  return score.rows();
}
