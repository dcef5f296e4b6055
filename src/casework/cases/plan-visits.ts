import {
  type Cents,
  formatInfeasibleReason,
  type PlanAnswer,
  type PlanInstance,
  type ProgrammeSolver,
  type RemedyPrice,
  solvePlan,
  type VisitChoice,
} from "#engines/planning";
import type { Family, Limit, ShopRates } from "#vehicle";
import { type BroughtAlong, findBroughtAlong } from "./brought-along.ts";
import { checkPlanVisits, oddityWords } from "./check-plan-visits.ts";
import type { PlanDocument } from "./documents.ts";
import { buildInstance, MOST_RISK } from "./plan-instance.ts";
import { describeVisit, type PlannedVisit, priceVisit } from "./price-visit.ts";
import { type RemainingLife, remainingLife, riskOver, solveHalfGoneKm } from "./remaining-life.ts";
import type { CarRemedy } from "./remedies.ts";
import { type Alternative, computeAlternatives } from "./waiting-cost.ts";

export interface PlannedRemedy {
  readonly remedy: CarRemedy;
  /** Index of the visit it is done at; null: declined, or left for later than the horizon. */
  readonly visit: number | null;
  readonly declined: boolean;
  readonly agreed: boolean;
  /** Somebody set the visit by hand. */
  readonly fixed: boolean;
  /** Name of the cause it cures that somebody accepted as the cause of the complaint; null: none. */
  readonly accepted: string | null;
  /** What it adds to the visit; null: not within the plan, or its work stands in the price of another. */
  readonly price: RemedyPrice | null;
  /** The remedy whose work holds all of this one's, at the same visit; null: none. */
  readonly broughtBy: BroughtAlong | null;
  /** False: a part of it has no price on file; the price is then labour and what is known. */
  readonly priceComplete: boolean;
  readonly remaining: RemainingLife | null;
  /** Km from now by which half of such parts have gone; null without a band. */
  readonly halfGoneKm: number | null;
  /** Chance that it does not last from now to each visit, and to the horizon at the end. */
  readonly riskTo: readonly (number | null)[];
  /** Expected cost of the plan with it at each visit instead, and left out; empty where nothing is planned. */
  readonly alternatives: readonly Alternative[];
  /** Why it stands where it stands, in one sentence. */
  readonly why: string;
}

export interface VisitPlan {
  readonly remedies: readonly PlannedRemedy[];
  readonly visits: readonly PlannedVisit[];
  /** Total of each visit, cents without tax. */
  readonly totals: readonly Cents[];
  readonly status: PlanAnswer["status"] | "nothing-to-plan";
  /** Expected cost over the whole plan, risk of failure included, and what no plan can be below. */
  readonly cost: Cents | null;
  readonly bound: Cents | null;
  /** What the visits set by hand have done to the rest; null: none is set by hand, or there is no plan. */
  readonly byHand: SetByHand | null;
  /** Why there is no plan, where there is none. */
  readonly reasons: readonly string[];
}

/** What hand settings have done to a plan. */
export interface SetByHand {
  /** What nobody set and yet stands at another visit than without the settings; null: not within the plan. */
  readonly moved: readonly {
    readonly id: string;
    readonly label: string;
    readonly from: number | null;
    readonly to: number | null;
  }[];
  /** Expected cost of the plan without the settings, cents; null: it has none. */
  readonly freeCost: Cents | null;
}

/** A page waits no longer than this for the best plan, s; then the best found stands, with its gap. */
const LONGEST_SEARCH = 10;

export const emptyPlan = (): VisitPlan => ({
  remedies: [],
  visits: [],
  totals: [],
  status: "nothing-to-plan",
  cost: null,
  bound: null,
  byHand: null,
  reasons: [],
});

/**
 * Now or later: the least expected cost over the visits, proved, with shared access charged once a visit; prices of the
 * remedies of each visit re-add to the visit's total. Remedies the owner declined are left out and the rest repriced.
 * @param accepted remedies of causes somebody accepted, by id, with the name of the cause: they are done now
 */
export function planVisits(
  family: Family,
  limits: readonly Limit[],
  remedies: readonly CarRemedy[],
  plan: PlanDocument,
  rates: ShopRates,
  solver: ProgrammeSolver,
  accepted: ReadonlyMap<string, string> = new Map(),
): VisitPlan {
  const kept = remedies.filter((r) => !plan.declined.includes(r.id));
  const now = plan.visits[0]?.odometerKm ?? 0;
  const odd = checkPlanVisits(plan, now);
  const solveFor = (fixed: PlanDocument["fixed"]): SolvedPlan =>
    solveKept(buildInstance(family, limits, kept, { ...plan, fixed }, rates, new Set(accepted.keys())), solver);
  const solved = kept.length === 0 || plan.visits.length === 0 || odd.length > 0 ? null : solveFor(plan.fixed);
  const choices = solved === null ? [] : choicesOf(solved);
  const visitOf = visitsOfRemedies(choices);
  const brought = findBroughtAlong(kept, visitOf);
  const visits = plan.visits.map((visit, i) => {
    const here = kept.filter((r) => visitOf.get(r.id) === i && !brought.has(r.id));
    const prices = priceVisit(here, rates);
    return { prices, described: describeVisit(visit, here, prices, rates) };
  });
  const planned = remedies.map((remedy): PlannedRemedy => {
    const broughtBy = brought.get(remedy.id) ?? null;
    const visit = broughtBy?.visit ?? visitOf.get(remedy.id) ?? null;
    const remaining = remainingLife(family, limits, remedy, now);
    const facts = {
      remedy,
      visit,
      broughtBy,
      declined: plan.declined.includes(remedy.id),
      agreed: plan.agreed.some((a) => a.remedy === remedy.id),
      fixed: plan.fixed.some((f) => f.remedy === remedy.id),
      accepted: accepted.get(remedy.id) ?? null,
      remaining,
      riskTo: [...plan.visits.map((v) => v.odometerKm), plan.horizonKm].map((km) =>
        remaining ? riskOver(remaining, Math.max(0, km - now)) : null,
      ),
    };
    return {
      ...facts,
      price: visit === null ? null : (visits[visit]?.prices.remedies.find((p) => p.id === remedy.id) ?? null),
      priceComplete: remedy.parts.every((p) => p.priceCents !== null),
      halfGoneKm: remaining ? solveHalfGoneKm(remaining) : null,
      alternatives:
        solved && choices.length > 0 && isIn(solved.instance, remedy.id)
          ? computeAlternatives(solved.instance, choices, remedy.id, (at) =>
              at === visitOf.get(remedy.id)
                ? costOf(solved)
                : costOf(
                    solveFor([...plan.fixed.filter((f) => f.remedy !== remedy.id), { remedy: remedy.id, visit: at }]),
                  ),
            )
          : [],
      why: whyWords(facts),
    };
  });
  const answer = solved?.answer ?? null;
  return {
    remedies: planned,
    visits: visits.map((v) => v.described),
    totals: visits.map((v) => v.prices.total),
    status: odd.length > 0 ? "infeasible" : answer ? answer.status : "nothing-to-plan",
    cost: solved === null ? null : costOf(solved),
    bound: answer && answer.status !== "infeasible" ? answer.bound : null,
    byHand:
      choices.length > 0 && plan.fixed.some((f) => kept.some(({ id }) => id === f.remedy))
        ? compareWithFree(solveFor([]), planned, plan)
        : null,
    reasons:
      odd.length > 0
        ? odd.map(oddityWords)
        : answer?.status === "infeasible"
          ? answer.reasons.map(formatInfeasibleReason)
          : [],
  };
}

interface SolvedPlan {
  readonly instance: PlanInstance;
  readonly answer: PlanAnswer;
}

const choicesOf = ({ answer }: SolvedPlan): readonly VisitChoice[] =>
  answer.status === "infeasible" ? [] : answer.visits;

const costOf = ({ answer }: SolvedPlan): Cents | null => (answer.status === "infeasible" ? null : answer.cost);

/** The first visit each remedy is done at, by its id. */
function visitsOfRemedies(choices: readonly VisitChoice[]): ReadonlyMap<string, number> {
  const visitOf = new Map<string, number>();
  for (const v of choices) for (const id of v.replace) if (!visitOf.has(id)) visitOf.set(id, v.visit - 1);
  return visitOf;
}

/** What nobody set by hand and yet stands elsewhere than in the plan that is free to choose. */
function compareWithFree(free: SolvedPlan, planned: readonly PlannedRemedy[], plan: PlanDocument): SetByHand {
  const visitOf = visitsOfRemedies(choicesOf(free));
  const kept = planned.filter(({ declined }) => !declined);
  const brought = findBroughtAlong(
    kept.map(({ remedy }) => remedy),
    visitOf,
  );
  const moved = kept.flatMap(({ remedy: { id, label }, visit }) => {
    const from = brought.get(id)?.visit ?? visitOf.get(id) ?? null;
    return from === visit || plan.fixed.some((f) => f.remedy === id) ? [] : [{ id, label, from, to: visit }];
  });
  return { moved, freeCost: costOf(free) };
}

const isIn = (instance: PlanInstance, id: string): boolean =>
  [...instance.parts, ...instance.upgrades].some((item) => item.id === id);

/** A part too old for its band can break its own risk limit whatever is done: then it is due now, and that is the answer. */
function solveKept(instance: PlanInstance, solver: ProgrammeSolver): SolvedPlan {
  const answer = solvePlan(instance, solver, LONGEST_SEARCH);
  if (answer.status !== "infeasible") return { instance, answer };
  const stuck = answer.reasons.flatMap((r) => (r.kind === "part" ? [r.id] : []));
  if (stuck.length === 0) return { instance, answer };
  const due = {
    ...instance,
    parts: instance.parts.map((p) =>
      stuck.includes(p.id) ? { ...p, mustNow: true, wear: p.wear && { ...p.wear, mostRisk: null } } : p,
    ),
  };
  return { instance: due, answer: solvePlan(due, solver, LONGEST_SEARCH) };
}

type WhyFacts = Pick<
  PlannedRemedy,
  "remedy" | "visit" | "broughtBy" | "declined" | "fixed" | "accepted" | "remaining" | "riskTo"
>;

function whyWords(p: WhyFacts): string {
  if (p.declined) return "Declined by the owner.";
  if (p.broughtBy !== null) return `Done with ${p.broughtBy.name}: its work is part of that, and in that price.`;
  if (p.fixed) return "Set to this visit by hand.";
  if (p.accepted !== null) return `Accepted as the cause of the complaint (${p.accepted}): it is done now.`;
  if (p.remedy.grade >= 3) return "Repair first: it is done now.";
  if (p.visit === null)
    return p.remaining
      ? "Waiting costs least; looked at again at each visit."
      : "No life on file and nothing asks for it yet; looked at again at each visit.";
  if (!p.remaining)
    return p.visit === 0
      ? "No life on file: it could wait for the second visit at most; done now the plan costs least."
      : "No life on file: what asks to be planned is done by the second visit.";
  const next = p.riskTo[p.visit + 1] ?? null;
  if (p.remedy.grade === 2 && next !== null && next > MOST_RISK)
    return `Beyond this visit the chance that it does not last goes over ${Math.round(MOST_RISK * 100)} %.`;
  return "Done here the plan costs least, what is shared and what may fail counted.";
}
