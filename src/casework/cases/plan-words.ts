import type { Cents } from "#engines/planning";
import { formatFigure, formatNumber } from "../fault/format-figure.ts";
import type { Figure } from "../fault-effect.ts";
import { formatKm, grouped } from "./format-km.ts";
import type { PlannedRemedy, VisitPlan } from "./plan-visits.ts";
import type { WhatItDoes } from "./what-it-does.ts";

/** Money as every page and paper writes it: "1 240 EUR", with hundredths only where there are any. */
export function formatMoney(cents: Cents, currency: string): string {
  const [whole = "0", rest = ""] = formatNumber(cents / 100, cents % 100 === 0 ? 0 : 2).split(".");
  return `${grouped(whole)}${rest === "" ? "" : `.${rest}`} ${currency}`;
}

/** A chance as a percentage nobody takes for certainty. */
export function formatChance(chance: number): string {
  if (chance < 0.005) return "less than 1 %";
  if (chance > 0.995) return "more than 99 %";
  return `${formatNumber(100 * chance, 0)} %`;
}

/** How good the plan is: proved, or how far from the best it can be at most. */
export function planStatusWords(plan: VisitPlan, currency: string): string {
  if (plan.visits.length === 0 && plan.remedies.length > 0)
    return "No visits are set, so nothing is planned: set the visits the work can be done at.";
  switch (plan.status) {
    case "optimal":
      if (plan.byHand !== null)
        return `Cheapest under what you set by hand, proved${leftOutWords(plan)}.${freeWords(plan, currency)}`;
      return `Best plan${leftOutWords(plan) === "" ? "" : " over what is on file"}, proved${leftOutWords(plan)}: no split of this work over the visits has a lower expected cost.`;
    case "limit":
      if (plan.cost === null) return "No plan was found in the time given.";
      if (plan.byHand !== null)
        return `Cheapest found under what you set by hand in the time given.${freeWords(plan, currency)}`;
      return plan.bound === null
        ? "Best plan found in the time given; how far from the best it is could not be told."
        : `Best plan found in the time given; a better one can save ${formatMoney(plan.cost - plan.bound, currency)} at most.`;
    case "infeasible":
      return `There is no plan: ${plan.reasons.join("; ")}.`;
    case "nothing-to-plan":
      return "Nothing asks for work.";
  }
}

/** What the proof leaves out because it is not on file: ", without the price of 2 parts and how long 1 remedy lasts"; "" where it leaves out nothing. */
function leftOutWords({ remedies }: VisitPlan): string {
  const kept = remedies.filter(({ declined, broughtBy }) => !declined && broughtBy === null);
  const parts = kept.flatMap(({ remedy }) => remedy.parts.filter((part) => part.priceCents === null));
  const lives = kept.filter(({ remaining }) => remaining === null).length;
  const words = [
    ...(parts.length === 0 ? [] : [`the price of ${parts.length} ${parts.length === 1 ? "part" : "parts"}`]),
    ...(lives === 0 ? [] : [`how long what ${lives} ${lives === 1 ? "remedy renews" : "remedies renew"} would last`]),
  ];
  return words.length === 0 ? "" : `, without ${words.join(" and ")} (not on file)`;
}

/** What the plan would save if no visit were set by hand; "" where that is nothing, or not known. */
function freeWords({ cost, byHand }: VisitPlan, currency: string): string {
  const free = byHand?.freeCost ?? null;
  return cost === null || free === null || cost <= free
    ? ""
    : ` Left to itself the plan is expected to cost ${formatMoney(cost - free, currency)} less.`;
}

/** Name of a visit of a plan as it stands in a sentence. */
export const visitName = (plan: Pick<VisitPlan, "visits">, at: number | null): string =>
  at === null ? "not within this plan" : (plan.visits[at]?.label ?? "another visit");

/** Where the next work of a plan stands and what it comes to, in one sentence, for a visit nobody has agreed to anything at. */
export function nextWorkWords(plan: VisitPlan, currency: string): string {
  const first = plan.visits.find((v) => v.remedies.length > 0);
  if (first === undefined) return "No work is planned.";
  const sum = `${formatMoney(first.total, currency)} without tax`;
  return first === plan.visits[0]
    ? `Work for ${sum} is planned for now, and none of it is agreed to yet.`
    : `Nothing is planned for now. The next work is planned for ${first.label} at ${formatKm(first.odometerKm)}: ${sum}.`;
}

/** What moved to another visit because of what was set by hand, in one sentence; "" where nothing did. */
export function movedWithWords(plan: VisitPlan): string {
  const moved = plan.byHand?.moved ?? [];
  if (moved.length === 0) return "";
  const each = moved.map(
    ({ label, from, to }) => `${label} (was: ${visitName(plan, from)}; now: ${visitName(plan, to)})`,
  );
  return `Moved with it: ${each.join("; ")}.`;
}

/** What doing a remedy at another visit costs against where it stands, expected; null where that is not known. */
export function waitingCost(planned: PlannedRemedy, visit: number | null): Cents | null {
  const costAt = (at: number | null): Cents | null => planned.alternatives.find((a) => a.visit === at)?.cost ?? null;
  const [here, there] = [costAt(planned.visit), costAt(visit)];
  return planned.remaining === null || here === null || there === null ? null : there - here;
}

const NO_LIFE =
  "What waiting costs is not known: no life of this part is on file. A band of km over which such parts last, on the family sheet, would tell it.";

/** What waiting one visit longer costs, in one sentence. */
export function waitingWords(planned: PlannedRemedy, plan: VisitPlan, currency: string): string {
  if (planned.declined || planned.broughtBy !== null) return "";
  if (planned.remaining === null) return NO_LIFE;
  const next = planned.visit === null ? null : planned.visit + 1 < plan.visits.length ? planned.visit + 1 : null;
  const where = next === null ? "beyond this plan" : `until ${plan.visits[next]?.label ?? "the next visit"}`;
  if (planned.visit === null) {
    const now = waitingCost(planned, 0);
    return now === null ? "" : `Doing it now would cost ${formatMoney(now, currency)} more on average.`;
  }
  const more = waitingCost(planned, next);
  if (more === null) return "";
  const risk = planned.riskTo[next ?? plan.visits.length] ?? null;
  const { sound } = planned.remaining;
  const least = sound ? "" : "at least ";
  const shown = risk === null ? "" : formatChance(risk);
  const chance =
    shown === ""
      ? ""
      : ` The chance that it does not last so long is ${shown.startsWith("more") ? "" : least}${shown}.`;
  const bound = sound ? "" : " It was found worn; the figures are those of a sound part of its distance.";
  return more >= 0
    ? `Waiting ${where} costs ${least}${formatMoney(more, currency)} more on average.${chance}${bound}`
    : `Waiting ${where} would save ${sound ? "" : "at most "}${formatMoney(-more, currency)} on average.${chance}${bound}`;
}

/** What the parts of a visit cost, with what is not on file said. */
export function partsWords(parts: Cents, complete: boolean, currency: string): string {
  if (complete) return `parts ${formatMoney(parts, currency)}`;
  return parts === 0 ? "parts not on file" : `parts ${formatMoney(parts, currency)}, some not on file`;
}

/** To the next 500 km, below 1 000 km to the next 100. */
const roundKm = (km: number): number => (km >= 1000 ? Math.round(km / 500) * 500 : Math.round(km / 100) * 100);

/** How long such parts last from here, given the distance they have lasted and what the look says; practice, not a count. */
export function lifeWords({ halfGoneKm, remaining }: PlannedRemedy): string {
  if (remaining === null || halfGoneKm === null) return "Remaining life: not on file.";
  const rounded = roundKm(halfGoneKm);
  const age =
    remaining.ageFrom === "wear"
      ? `It is as far worn as half of such parts are after ${formatKm(roundKm(remaining.ageKm))}; of those that last so far`
      : `Of such parts that are sound after ${formatKm(remaining.ageKm)}`;
  const taken = remaining.ageFrom === "wear" ? "" : "; taken as fitted when the car was new";
  const first = `${age}, half are gone within ${formatKm(rounded)} from here (${remaining.source}${taken}).`;
  return remaining.sound ? first : `${first} This one was found worn: count on less.`;
}

type Does = Pick<WhatItDoes, "effect" | "shake">;

/**
 * What the faults a remedy cures do, in a few words: "shake 3.1 times as far under light braking; toe 0.32° further in
 * under braking"; "" where nothing is computed.
 */
export const effectWords = (findings: readonly Does[]): string =>
  [shakeWords(findings), toeWords(findings)].filter((words) => words !== "").join("; ");

/** The figure of which the sign is sure and that is largest; undefined where none is. */
const largestSure = (figures: readonly (Figure | undefined)[]): Figure | undefined =>
  figures
    .flatMap((figure) => (figure?.signSure ? [figure] : []))
    .toSorted((a, b) => Math.abs(b.value) - Math.abs(a.value))[0];

function shakeWords(findings: readonly Does[]): string {
  const worst = largestSure(findings.map(({ shake }) => shake?.headline));
  return worst === undefined ? "" : `shake ${formatFigure(worst)} as far under light braking`;
}

function toeWords(findings: readonly Does[]): string {
  const worst = largestSure(findings.map(({ effect }) => effect?.headline));
  if (worst === undefined) return "";
  const size = formatFigure({ ...worst, value: Math.abs(worst.value) });
  return `toe ${size} further ${worst.value >= 0 ? "in" : "out"} under braking`;
}
