import { type Cents, roundToCents } from "#engines/planning";
import type { ShopRates } from "#vehicle";
import { operationsOf } from "./plan-instance.ts";
import type { PlannedRemedy, VisitPlan } from "./plan-visits.ts";
import type { PlannedVisit } from "./price-visit.ts";
import type { CarRemedy } from "./remedies.ts";

/** One line of a price: a part, a piece of work, or the visit itself. */
export interface PriceLine {
  readonly kind: "part" | "labour" | "visit";
  /** Distinct within a price. */
  readonly id: string;
  readonly label: string;
  /** How many of a part; 1 for everything else. */
  readonly count: number;
  /** Price of one part, cents; null: not on file, or no part. */
  readonly each: Cents | null;
  /** Hours of work; null where it is no work. */
  readonly hours: number | null;
  /** What the whole of it costs, cents; null: not on file. */
  readonly whole: Cents | null;
  /** What of it is in this price; less than the whole where several remedies share it. Null: not on file. */
  readonly cents: Cents | null;
  /** Names of the remedies that need it, where there are several. */
  readonly among: readonly string[];
}

/** "rear-left" of "access/wheel-off@rear-left", as words. */
const placeWords = (id: string): string => id.slice(id.lastIndexOf("@") + 1).replace("-", " ");

/** A name with its place; an axle that stands in both is said once: "Damper, rear" at rear left is "Damper, rear left". */
const withPlace = (label: string, place: string): string => {
  const axle = place.split(" ")[0] ?? place;
  const stem = label.endsWith(`, ${axle}`) ? label.slice(0, -axle.length - 2) : label;
  return `${stem}, ${place}`;
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Wheel off, rear left"; work on the whole car has no place. */
const workName = (label: string, id: string): string => {
  const place = placeWords(id);
  return capital(place === "car" ? label : withPlace(label, place));
};

const workNames = (remedies: readonly CarRemedy[]): ReadonlyMap<string, string> =>
  new Map(
    remedies.flatMap((r) =>
      r.operations.flatMap((o) => [
        [o.id, workName(o.operation.label, o.id)] as const,
        ...o.access.map((a) => [a.id, workName(a.label, a.id)] as const),
      ]),
    ),
  );

const remedyName = (plan: VisitPlan, id: string): string => {
  const found = plan.remedies.find((r) => r.remedy.id === id)?.remedy;
  return found === undefined ? id : withPlace(found.label, placeWords(id));
};

const visitLine = (whole: Cents, cents: Cents, among: readonly string[]): PriceLine => ({
  kind: "visit",
  id: "visit",
  label: "The visit itself",
  count: 1,
  each: null,
  hours: null,
  whole,
  cents,
  among,
});

const partLine = (part: CarRemedy["parts"][number]): PriceLine => {
  const whole = part.priceCents === null ? null : part.priceCents * part.count;
  return {
    kind: "part",
    id: part.id,
    label: withPlace(part.label, placeWords(part.id)),
    count: part.count,
    each: part.priceCents,
    hours: null,
    whole,
    cents: whole,
    among: [],
  };
};

const labourLine = (
  operation: { readonly id: string; readonly hours: number },
  names: ReadonlyMap<string, string>,
  rates: ShopRates,
): PriceLine => {
  const whole = roundToCents((rates.labourCentsPerHour * operation.hours) / 100);
  return {
    kind: "labour",
    id: operation.id,
    label: names.get(operation.id) ?? operation.id,
    count: 1,
    each: null,
    hours: operation.hours,
    whole,
    cents: whole,
    among: [],
  };
};

/** What the price of a remedy is made of, line by line; what is on file adds up to it. None where it has no price. */
export function remedyPriceLines(planned: PlannedRemedy, plan: VisitPlan, rates: ShopRates): readonly PriceLine[] {
  const { remedy, price } = planned;
  if (price === null) return [];
  const shared = new Map(price.shares.map((s) => [s.id, s]));
  const names = workNames([remedy]);
  const own = [...remedy.parts.map(partLine), ...operationsOf([remedy]).map((o) => labourLine(o, names, rates))];
  const lines = own.map((line): PriceLine => {
    const share = shared.get(line.id);
    return share === undefined
      ? line
      : { ...line, cents: share.share, among: share.among.map((id) => remedyName(plan, id)) };
  });
  const visit = price.shares.find(({ kind }) => kind === "visit");
  if (visit !== undefined) {
    const among = visit.among.length > 1 ? visit.among.map((id) => remedyName(plan, id)) : [];
    lines.push(visitLine(visit.whole, visit.share, among));
  }
  return lines;
}

/** What a visit comes to, line by line, each once; what is on file adds up to its total. */
export function visitPriceLines(visit: PlannedVisit, plan: VisitPlan, rates: ShopRates): readonly PriceLine[] {
  const here = plan.remedies.filter((r) => visit.remedies.includes(r.remedy.id)).map((r) => r.remedy);
  const names = workNames(here);
  const sharers = new Map(visit.shared.map((s) => [s.id, s.among.map((id) => remedyName(plan, id))]));
  const parts = new Map(here.flatMap((r) => r.parts).map((part) => [part.id, partLine(part)]));
  const labour = operationsOf(here).map((o) => ({
    ...labourLine(o, names, rates),
    among: sharers.get(o.id) ?? [],
  }));
  return [
    ...parts.values(),
    ...labour,
    ...(visit.visitCost > 0 ? [visitLine(visit.visitCost, visit.visitCost, [])] : []),
  ];
}
