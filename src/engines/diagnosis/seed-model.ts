import type { Cause, Sign, SuspectModel } from "./suspects.ts";

/** How often each cause is found behind a symptom, as people state it; the shares may leave a remainder. */
export interface SharesOfSymptom {
  readonly symptom: string;
  /** By cause, each from 0 to 1, together at most 1. */
  readonly shares: ReadonlyMap<string, number>;
}

export interface SeedSettings {
  /**
   * Odds that any one cause brings a symptom about on a car as it drives in, all causes together: the smaller, the rarer
   * two at once (invented).
   */
  readonly odds: number;
  /** Strength of a cause for the symptom it is most behind (invented). */
  readonly strongest: number;
  /** Share of "none of these" where the stated shares leave no remainder (invented). */
  readonly leastLeakShare: number;
}

export const usualSeedSettings: SeedSettings = { odds: 0.15, strongest: 0.8, leastLeakShare: 0.03 };

/** Chance whose odds are given. */
const ofOdds = (odds: number): number => odds / (1 + odds);

/**
 * Priors, strengths and leaks that give the stated shares back: with the symptom alone observed, the chances that one
 * cure would do stand in the stated proportion, the remainder being the leak's. Each cause has one prior over all
 * symptoms, the one that its strongest symptom needs.
 */
export function seedModel(
  stated: readonly SharesOfSymptom[],
  settings: SeedSettings = usualSeedSettings,
): SuspectModel {
  const acting = stated.map(({ symptom, shares }) => {
    const total = [...shares.values()].reduce((sum, s) => sum + s, 0);
    const leakShare = Math.max(settings.leastLeakShare, 1 - total);
    const scale = settings.odds / (total + leakShare);
    return {
      symptom,
      leak: ofOdds(leakShare * scale),
      // Chance that the cause is there and brings the symptom about.
      acts: new Map([...shares].map(([cause, share]) => [cause, ofOdds(share * scale)])),
    };
  });
  const most = new Map<string, number>();
  for (const { acts } of acting) for (const [cause, a] of acts) most.set(cause, Math.max(most.get(cause) ?? 0, a));
  const causes = [...most].map(([id, a]): Cause => ({ id, prior: a / settings.strongest }));
  const priorOf = new Map(causes.map((c) => [c.id, c.prior]));
  const signs = acting.map(
    ({ symptom, leak, acts }): Sign => ({
      id: symptom,
      leak,
      strengths: new Map([...acts].map(([cause, a]) => [cause, a === 0 ? 0 : a / (priorOf.get(cause) as number)])),
    }),
  );
  return { causes, signs };
}
