import {
  asLeftWords,
  complaintWords,
  doesWords,
  findReadingPlace,
  formatMoney,
  formatNumber,
  foundAt,
  notTakenUpWords,
  type PlaceFinding,
  type PlannedRemedy,
  riskOver,
  saysNothing,
  shortAsLeftWords,
  symptoms,
  visitDateWords,
  waitingWords,
} from "#casework";
import { familyRungWords, gradeWords } from "#drawing";
import type { OwnersPageFacts } from "./owners-page-facts.ts";

/** One remedy as it stands on the page. */
export interface RemedyLine {
  readonly number: number;
  readonly grade: PlannedRemedy["remedy"]["grade"];
  readonly close: boolean;
  readonly positions: readonly string[];
  /** "Trailing link bushes, rear". */
  readonly label: string;
  /** What was found, and the limit with whose it is; what else it cures. */
  readonly found: readonly string[];
  /** What the fault does, or why it stands where it stands. */
  readonly sentence: string;
  /** Where it is advised, and what waiting does. */
  readonly waiting: string;
  /** Price without tax, cents; null where nothing is to be done within the plan. */
  readonly cents: number | null;
  readonly price: string;
  /** Who agreed to it, with the day. */
  readonly agreed: readonly string[];
  /** Km from now to where it is advised; null: not within the plan. */
  readonly advisedKm: number | null;
  /** Chance (0 to 1) that it lasts so many km from now; null: no life on file. */
  readonly lasts: ((km: number) => number) | null;
}

/** What the remedies of one visit come to, all in cents; the lines of the visit add up to the sum. */
export interface VisitSum {
  readonly label: string;
  readonly sum: number;
  readonly tax: number;
  readonly total: number;
  /** Parts that are needed and have no price on file; the sums are without them. */
  readonly unpriced: number;
}

/** The rule of distance where the plan has no end of its own, km. */
const USUAL_REACH = 30_000;
const KM_PER_MILE = 1.609344;

/** A distance in the car's own unit, as a number. */
export const distanceIn = (km: number, unit: "km" | "mi"): number => (unit === "mi" ? km / KM_PER_MILE : km);

/** A distance in the car's own unit: "128 440 km". */
export function distanceWords(km: number, unit: "km" | "mi"): string {
  const whole = formatNumber(distanceIn(km, unit), 0);
  return `${whole.replace(/\B(?=(\d{3})+(?!\d))/g, "\u00a0")} ${unit}`;
}

/** How far the rule of distance reaches from now, km. */
export function reachOfPlan({ appraisal: { planDocument }, visit }: OwnersPageFacts): number {
  const now = planDocument.visits[0]?.odometerKm ?? visit.odometerKm ?? 0;
  const reach = planDocument.horizonKm - now;
  return planDocument.visits.length === 0 || !(reach > 0) ? USUAL_REACH : reach;
}

/** True where the car was handed over, or every step of its job card is signed. */
export const isSignedOff = ({ visit, appraisal: { jobCard } }: OwnersPageFacts): boolean =>
  visit.closed || (jobCard.steps.length > 0 && jobCard.done === jobCard.steps.length);

/**
 * The title of a page: before the work what is needed, once it is signed what was done; later pages say which remedies
 * they go on with.
 */
export function titleWords(facts: OwnersPageFacts, page: number, numbers: readonly number[]): string {
  const title = isSignedOff(facts) ? "What was done, and what comes next" : "What your car needs, and by when";
  const [first, last] = [numbers[0], numbers.at(-1)];
  const which = first === last ? `number ${first}` : `numbers ${first} to ${last}`;
  return page === 0 ? title : `${title.slice(0, title.indexOf(","))}: ${which}`;
}

/** Remedies the owner has not declined, numbered in the order of the appraisal. */
export function remedyLines(facts: OwnersPageFacts): readonly RemedyLine[] {
  return facts.appraisal.plan.remedies
    .filter(({ declined }) => !declined)
    .map((planned, i) => remedyLine(planned, i + 1, facts));
}

function remedyLine(planned: PlannedRemedy, number: number, facts: OwnersPageFacts): RemedyLine {
  const { remedy, remaining } = planned;
  const { appraisal, rates } = facts;
  const { plan, planDocument } = appraisal;
  const [worst, ...others] = remedy.findings.toSorted((a, b) => (b.grade ?? 0) - (a.grade ?? 0));
  const appraised = remedy.findings.flatMap(({ place }) => appraisal.findings.find((f) => f.place === place) ?? []);
  const does = appraised.map(doesWords).find((words) => words !== "");
  const reading = appraised.map((finding) => finding.advice).find((one) => one !== null);
  const now = planDocument.visits[0]?.odometerKm ?? 0;
  const at = planned.visit === null ? null : (planDocument.visits[planned.visit] ?? null);
  const incomplete =
    planned.price === null || planned.priceComplete ? "" : "The price is without a part that is not on file.";
  const isDone = planned.visit === 0 && planned.agreed && isSignedOff(facts);
  const advice = isDone
    ? "Done at this visit."
    : at === null
      ? "Nothing now."
      : `${at.label}${planned.visit === 0 ? "" : `, ${visitDateWords(at, { visit: facts.visit, year: facts.car.year })}`}.`;
  return {
    number,
    grade: remedy.grade,
    close: remedy.closeToCall,
    positions: [worst, ...others].flatMap((finding) => (finding === undefined ? [] : [drawnPlace(finding)])),
    label: labelWords(planned),
    found: [
      ...(worst === undefined
        ? []
        : [
            worst.found,
            ...(worst.limitWords === null ? [] : [worst.limitWords]),
            ...(worst.caveat === null ? [] : [worst.caveat]),
          ]),
      ...(others.length === 0 ? [] : [`and ${others.length} more ${others.length === 1 ? "place" : "places"}`]),
    ],
    sentence:
      isDone && does === undefined
        ? "Done, and signed."
        : planned.broughtBy !== null
          ? planned.why
          : (does ?? reading ?? planned.why),
    waiting: [advice, isDone ? "" : waitingWords(planned, plan, rates.currency), incomplete]
      .filter((part) => part !== "")
      .join(" "),
    cents: planned.price?.total ?? null,
    price:
      planned.broughtBy !== null
        ? "done with it"
        : planned.price === null
          ? "nothing now"
          : formatMoney(planned.price.total, rates.currency),
    agreed: planDocument.agreed
      .filter((one) => one.remedy === remedy.id)
      .map(({ by, at: when }) => `${by}, ${when.slice(0, 10)}`),
    advisedKm: at === null ? null : Math.max(0, at.odometerKm - now),
    lasts: remaining === null ? null : (km) => 1 - riskOver(remaining, km),
  };
}

/** Where a finding stands on the drawing: what is only read at a wheel stands at its tyre. */
const drawnPlace = ({ place, axle, side }: PlaceFinding): string =>
  findReadingPlace(place) === null || side === null ? place : `${axle}-${side}/tyre/tread`;

/** The name of a remedy with where it is done: "Pads, rear" for a pair, "Ball joint, front left" for one side. */
function labelWords({ remedy: { label, axle, sides } }: PlannedRemedy): string {
  const named = axle !== null && label.toLowerCase().split(/\W+/).includes(axle);
  const side = sides.length === 1 ? sides : [];
  const where = [...(axle === null || named ? [] : [axle]), ...side].join(" ");
  return where === "" ? label : `${label}${named ? " " : ", "}${where}`;
}

/** What each visit comes to: its printed remedies, tax on their sum, and the total. */
export function visitSums({ appraisal: { plan, planDocument }, rates }: OwnersPageFacts): readonly VisitSum[] {
  return planDocument.visits.flatMap(({ label }, i): readonly VisitSum[] => {
    const priced = plan.remedies.filter(({ declined, visit, price }) => !declined && visit === i && price !== null);
    const prices = priced.flatMap(({ price }) => (price === null ? [] : [price.total]));
    const unpriced = priced.flatMap(({ remedy }) => remedy.parts).filter((part) => part.priceCents === null);
    if (prices.length === 0) return [];
    const sum = prices.reduce((total, cents) => total + cents, 0);
    const tax = Math.round(sum * rates.taxShare);
    return [{ label, sum, tax, total: sum + tax, unpriced: unpriced.reduce((n, part) => n + part.count, 0) }];
  });
}

/** A visit's sum in words: "Now: 587 EUR and 20 % tax 117.40 EUR, together 704.40 EUR". */
export function sumWords(
  { label, sum, tax, total, unpriced }: VisitSum,
  { currency, taxShare }: OwnersPageFacts["rates"],
): string {
  const share = formatNumber(100 * taxShare, Number.isInteger(Math.round(1e6 * taxShare) / 1e4) ? 0 : 1);
  const without =
    unpriced === 0
      ? ""
      : `, without ${unpriced} ${unpriced === 1 ? "part that has" : "parts that have"} no price on file`;
  return `${label}: ${formatMoney(sum, currency)}, ${share} % tax ${formatMoney(tax, currency)}, together ${formatMoney(total, currency)}${without}`;
}

/** A list in words; of a long one the first `most` are named and the rest counted. */
const listWords = (parts: readonly string[], most: number): string =>
  parts.length <= most + 1 ? parts.join("; ") : `${parts.slice(0, most).join("; ")}; and ${parts.length - most} more`;

/**
 * What the page says below the remedies, one paragraph each.
 * @param most so many of each list are named, the rest is counted; where it is finite the readings are told shortly too
 */
export function noteWords(facts: OwnersPageFacts, most: number): readonly string[] {
  const { appraisal } = facts;
  const declined = appraisal.plan.remedies.filter((one) => one.declined).map(labelWords);
  const uncured = appraisal.uncured.map((finding) => {
    const advice = appraisal.findings.find((f) => f.place === finding.place)?.advice ?? null;
    return `${foundAt(finding)}${advice === null ? "" : `. ${advice.replace(/\.$/, "")}`}`;
  });
  const notKnown = appraisal.findings.filter(saysNothing);
  const rung = facts.family === null ? [] : familyRungWords(facts.family);
  const sources = [
    ...new Set(appraisal.plan.remedies.flatMap(({ remaining }) => (remaining === null ? [] : [remaining.source]))),
  ];
  return [
    ...enquiryWords(facts),
    ...(Number.isFinite(most)
      ? shortAsLeftWords({ readings: appraisal.asLeft })
      : asLeftWords({ readings: appraisal.asLeft, axles: appraisal.axlesAsLeft })),
    "Work done on the same day shares the taking apart, counted once in these prices. Leaving one out changes the others; they are priced again before anyone signs.",
    ...(declined.length === 0 ? [] : [`Declined: ${listWords(declined, most)}.`]),
    ...(uncured.length === 0 ? [] : [`Found, with no remedy on file: ${listWords(uncured, most)}.`]),
    ...(notKnown.length === 0
      ? []
      : [`Read, and yet not known: ${listWords(notKnown.map(foundAt), most)}. ${notKnown[0]?.caveat ?? ""}`]),
    ...(appraisal.notLookedAt === 0
      ? []
      : [
          `${appraisal.notLookedAt} ${appraisal.notLookedAt === 1 ? "place was" : "places were"} not looked at yet (hatched).`,
        ]),
    ...(rung.length === 0 ? [] : [`The car is drawn so: ${rung.join("; ")}.`]),
    ...(sources.length === 0 ? [] : [`How long parts last: from practice, not counted here (${sources.join("; ")}).`]),
  ];
}

/** What the owner came with, and what came of each complaint. */
function enquiryWords({ words, appraisal: { complaints } }: OwnersPageFacts): readonly string[] {
  if (words === "" && complaints.length === 0) return [];
  const said = words === "" ? "" : `You came with: \u201c${words.replace(/\.$/, "")}\u201d.`;
  const none = complaints.length === 0 ? "No complaint was made out in it yet, so nothing was looked for." : "";
  const chosen = complaints.map(({ symptom }) => symptom);
  const rest = complaints.length === 0 ? "" : notTakenUpWords(words, symptoms, chosen);
  return [[said, none, ...complaints.map(complaintWords), rest].filter((part) => part !== "").join(" ")];
}

/** What to take care of: by the worst grade, and what this page is. */
export function cautionWords(facts: OwnersPageFacts): readonly string[] {
  const lines = remedyLines(facts);
  const named = (grade: 3 | 4): string => {
    const numbers = lines.flatMap((line) => (line.grade === grade ? [String(line.number)] : []));
    const last = numbers.at(-1);
    if (last === undefined) return "";
    return numbers.length === 1 ? `number ${last}` : `numbers ${numbers.slice(0, -1).join(", ")} and ${last}`;
  };
  return [
    ...(named(4) === "" ? [] : [`${gradeWords[4]} this car until the work is done: ${named(4)}.`]),
    ...(named(3) === "" ? [] : [`${gradeWords[3]}: ${named(3)} before anything else.`]),
    "The vehicle maker's figures for this very car come first, and the law of the place where it is stricter. This page says what was seen and what follows from it; it is no inspection.",
  ];
}
