import { type Action, explainAllWith, explainNothing, unite } from "./explained-sets.ts";

/** Something that may be wrong with the car. */
export interface Cause {
  readonly id: string;
  /** Chance that it is there before anything is known of this visit. */
  readonly prior: number;
}

/**
 * Something that can be noticed: a symptom, or what a look shows. Every cause that is there brings it about on its own
 * with its strength; `leak` is the chance of it with none of the causes (noisy-OR).
 */
export interface Sign {
  readonly id: string;
  readonly leak: number;
  /** By cause; a cause that is not named does not bring it about. */
  readonly strengths: ReadonlyMap<string, number>;
}

export interface SuspectModel {
  readonly causes: readonly Cause[];
  readonly signs: readonly Sign[];
}

/** What is known: ids of signs. */
export interface Observation {
  /** What the owner complains of; all of it must go for the complaint to be cured. At least one. */
  readonly complaint: readonly string[];
  /** Further signs that are there, and signs that were looked for and are not. */
  readonly present: readonly string[];
  readonly absent: readonly string[];
}

export interface Suspect {
  readonly cause: string;
  /** Chance that curing it cures the complaint: it brings all of it about, and nothing else brings any of it. */
  readonly cures: number;
  /** Chance that it is there at all. */
  readonly there: number;
}

export type SuspectAnswer =
  | {
      readonly kind: "answered";
      /** The likeliest cure first. */
      readonly suspects: readonly Suspect[];
      /** Chance that several things bring the complaint about, so that no single cure would do. */
      readonly twoAtOnce: number;
      /** Chance that none of the causes does. */
      readonly somethingElse: number;
      /** Chance of all that was observed, before it was. */
      readonly observationProbability: number;
    }
  /** What was observed cannot be under this model. */
  | { readonly kind: "impossible" };

/** Signs of one complaint that are there and have several causes; beyond it the tables grow too large (invented bound). */
export const MOST_SIGNS = 14;

/** The model with what is known worked into it: only signs that are there and have several causes are left as sets. */
interface Evidence {
  readonly causes: readonly Cause[];
  /** Weight of each cause being there and not, with everything that only concerns it. */
  readonly present: number[];
  readonly absent: number[];
  readonly complaint: readonly Sign[];
  readonly others: readonly Sign[];
  /** Chance of the rest that does not depend on any cause. */
  constant: number;
}

const strengthOf = (sign: Sign, cause: Cause): number => sign.strengths.get(cause.id) ?? 0;

function gatherEvidence(model: SuspectModel, seen: Observation): Evidence {
  const byId = new Map(model.signs.map((s) => [s.id, s]));
  const find = (id: string): Sign => {
    const sign = byId.get(id);
    if (!sign) throw new Error(`${id} is named but not listed`);
    return sign;
  };
  if (seen.complaint.length === 0) throw new Error("a complaint has at least one sign");
  const both = [...seen.complaint, ...seen.present].find((id) => seen.absent.includes(id));
  if (both !== undefined) throw new Error(`${both} is said to be there and not there`);
  const { causes } = model;
  const present = causes.map((c) => c.prior);
  const absent = causes.map((c) => 1 - c.prior);
  let constant = 1;
  const times = (list: number[], i: number, by: number): void => {
    list[i] = (list[i] as number) * by;
  };
  for (const id of seen.absent) {
    const sign = find(id);
    constant *= 1 - sign.leak;
    for (const [i, c] of causes.entries()) times(present, i, 1 - strengthOf(sign, c));
  }
  const complaint = [...new Set(seen.complaint)].map(find);
  const others: Sign[] = [];
  for (const id of new Set(seen.present.filter((p) => !seen.complaint.includes(p)))) {
    const sign = find(id);
    const bringing = causes.flatMap((c, i) => (strengthOf(sign, c) > 0 ? [i] : []));
    const [only] = bringing;
    if (only === undefined) constant *= sign.leak;
    else if (bringing.length === 1) {
      times(present, only, 1 - (1 - sign.leak) * (1 - strengthOf(sign, causes[only] as Cause)));
      times(absent, only, sign.leak);
    } else others.push(sign);
  }
  if (complaint.length + others.length > MOST_SIGNS) throw new Error(`more than ${MOST_SIGNS} signs at once`);
  return { causes, present, absent, complaint, others, constant };
}

/** What the leaks of these signs do. */
const leakOf = (signs: readonly Sign[]): Action => ({ strengths: signs.map((s) => s.leak), present: 1, absent: 0 });

/** Chance that a cause that is there brings about none of these signs. */
const spares = (signs: readonly Sign[], cause: Cause): number =>
  signs.reduce((product, s) => product * (1 - strengthOf(s, cause)), 1);

/** Chance that it brings about all of them. */
const brings = (signs: readonly Sign[], cause: Cause): number =>
  signs.reduce((product, s) => product * strengthOf(s, cause), 1);

/** What every cause does to these signs, its weight of being there times a further chance. */
function actionsOn(
  e: Evidence,
  signs: readonly Sign[],
  further: (cause: Cause) => number,
  absent: readonly number[] | null,
): Action[] {
  return e.causes.map((c, i) => ({
    strengths: signs.map((s) => strengthOf(s, c)),
    present: (e.present[i] as number) * further(c),
    absent: absent ? (absent[i] as number) : 0,
  }));
}

const always = (): number => 1;
const last = (table: Float64Array): number => table[table.length - 1] as number;

/** Chance of everything observed. */
function computeProbability(e: Evidence): number {
  const signs = [...e.complaint, ...e.others];
  const start = unite(explainNothing(signs.length), leakOf(signs));
  return e.constant * last(actionsOn(e, signs, always, e.absent).reduce(unite, start));
}

/** Joint chances with everything observed that each cause is there. */
function computeThere(e: Evidence): number[] {
  const signs = [...e.complaint, ...e.others];
  const start = unite(explainNothing(signs.length), leakOf(signs));
  const there = explainAllWith(start, actionsOn(e, signs, always, e.absent), actionsOn(e, signs, always, null));
  return there.map((chance) => chance * e.constant);
}

/** Joint chances with everything observed that each cause alone brings the whole complaint about. */
function computeCures(e: Evidence): number[] {
  const start = unite(explainNothing(e.others.length), leakOf(e.others));
  const sparing = actionsOn(e, e.others, (c) => spares(e.complaint, c), e.absent);
  const bringing = actionsOn(e, e.others, (c) => brings(e.complaint, c), null);
  const noLeak = e.complaint.reduce((product, s) => product * (1 - s.leak), e.constant);
  return explainAllWith(start, sparing, bringing).map((chance) => chance * noLeak);
}

/** Joint chance with everything observed that no cause brings any of the complaint about: all of it is leak. */
function computeSomethingElse(e: Evidence): number {
  const start = unite(explainNothing(e.others.length), leakOf(e.others));
  const sparing = actionsOn(e, e.others, (c) => spares(e.complaint, c), e.absent);
  return e.complaint.reduce((product, s) => product * s.leak, e.constant) * last(sparing.reduce(unite, start));
}

/** Chance of an observation and the highest chance that one cure would do, for the choice of looks. */
export function computeLead(
  model: SuspectModel,
  seen: Observation,
): { readonly probability: number; readonly lead: number } {
  const e = gatherEvidence(model, seen);
  const probability = computeProbability(e);
  return { probability, lead: probability === 0 ? 0 : Math.max(0, ...computeCures(e)) / probability };
}

/**
 * Every cause with the chance that curing it cures the complaint and the chance that it is there, and what remains: two
 * at once, something else. Exact, for any number of causes and up to 14 signs at once that have several causes. Names
 * must be listed.
 */
export function computeSuspects(model: SuspectModel, seen: Observation): SuspectAnswer {
  const e = gatherEvidence(model, seen);
  const probability = computeProbability(e);
  if (probability === 0) return { kind: "impossible" };
  const cures = computeCures(e).map((c) => c / probability);
  const there = computeThere(e).map((c) => c / probability);
  const somethingElse = computeSomethingElse(e) / probability;
  const suspects = e.causes.map((c, i) => ({ cause: c.id, cures: cures[i] as number, there: there[i] as number }));
  return {
    kind: "answered",
    suspects: suspects.toSorted((a, b) => b.cures - a.cures),
    twoAtOnce: Math.max(0, 1 - somethingElse - cures.reduce((sum, c) => sum + c, 0)),
    somethingElse,
    observationProbability: probability,
  };
}
