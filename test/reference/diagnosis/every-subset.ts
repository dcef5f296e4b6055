import type { Observation, SuspectModel } from "#engines/diagnosis";

/** What the suspects must be, by summing over every subset of causes; 2 to the number of causes terms. */
export interface SubsetFigures {
  readonly probability: number;
  readonly cures: readonly number[];
  readonly there: readonly number[];
  readonly twoAtOnce: number;
  readonly somethingElse: number;
}

export function sumOverSubsets(model: SuspectModel, seen: Observation): SubsetFigures {
  const { causes, signs } = model;
  const n = causes.length;
  const q = (sign: string, i: number): number =>
    signs.find((s) => s.id === sign)?.strengths.get(causes[i]?.id ?? "") ?? 0;
  const leak = (sign: string): number => signs.find((s) => s.id === sign)?.leak ?? 0;
  const further = seen.present.filter((s) => !seen.complaint.includes(s));
  const cures = causes.map(() => 0);
  const there = causes.map(() => 0);
  let probability = 0;
  let twoAtOnce = 0;
  let somethingElse = 0;
  for (let subset = 0; subset < 2 ** n; subset++) {
    const inside = causes.map((_, i) => i).filter((i) => subset & (1 << i));
    let weight = causes.reduce((w, c, i) => w * (subset & (1 << i) ? c.prior : 1 - c.prior), 1);
    const none = (sign: string): number => inside.reduce((p, i) => p * (1 - q(sign, i)), 1 - leak(sign));
    for (const sign of seen.absent) weight *= none(sign);
    for (const sign of further) weight *= 1 - none(sign);
    const all = seen.complaint.reduce((p, sign) => p * (1 - none(sign)), 1);
    probability += weight * all;
    for (const i of inside) there[i] = (there[i] ?? 0) + weight * all;
    let told = 0;
    for (const i of inside) {
      // It brings about every sign of the complaint; the others inside and the leaks bring about none.
      const alone = seen.complaint.reduce(
        (p, sign) =>
          p * q(sign, i) * (1 - leak(sign)) * inside.reduce((r, j) => (j === i ? r : r * (1 - q(sign, j))), 1),
        1,
      );
      cures[i] = (cures[i] ?? 0) + weight * alone;
      told += alone;
    }
    const leaks = seen.complaint.reduce(
      (p, sign) => p * leak(sign) * inside.reduce((r, j) => r * (1 - q(sign, j)), 1),
      1,
    );
    somethingElse += weight * leaks;
    twoAtOnce += weight * (all - told - leaks);
  }
  const share = (x: number): number => x / probability;
  return {
    probability,
    cures: cures.map(share),
    there: there.map(share),
    twoAtOnce: share(twoAtOnce),
    somethingElse: share(somethingElse),
  };
}
