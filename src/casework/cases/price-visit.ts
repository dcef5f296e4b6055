import { type Cents, computeRemedyPrices, type RemedyPrices, roundToCents } from "#engines/planning";
import type { ShopRates } from "#vehicle";
import { operationsOf } from "./plan-instance.ts";
import type { CarRemedy } from "./remedies.ts";

/** A piece of work that several remedies of a visit need and that is charged once. */
export interface SharedWork {
  readonly id: string;
  readonly label: string;
  readonly hours: number;
  readonly cents: Cents;
  /** Ids of the remedies that share it. */
  readonly among: readonly string[];
}

/** What one visit holds and costs, without tax; parts, labour and the visit itself add up to the total. */
export interface PlannedVisit {
  readonly label: string;
  readonly odometerKm: number;
  readonly remedies: readonly string[];
  readonly parts: Cents;
  readonly hours: number;
  readonly labour: Cents;
  readonly visitCost: Cents;
  readonly total: Cents;
  readonly shared: readonly SharedWork[];
}

/** Prices of one visit's remedies, cents without tax; they re-add to the total exactly. */
export function priceVisit(remedies: readonly CarRemedy[], rates: ShopRates): RemedyPrices {
  return computeRemedyPrices(
    {
      labourRate: rates.labourCentsPerHour,
      operations: operationsOf(remedies),
      hardware: [],
      kits: [],
      visitCost: remedies.length > 0 ? rates.visitCents : 0,
      alignment: null,
    },
    remedies.map((r) => ({
      id: r.id,
      operations: r.operations.map((o) => o.id),
      parts: r.parts.map((p) => ({ id: p.id, price: (p.priceCents ?? 0) * p.count })),
    })),
  );
}

/** Names of operations and access pieces, by id. */
export function workLabels(remedies: readonly CarRemedy[]): ReadonlyMap<string, string> {
  return new Map(
    remedies.flatMap((r) =>
      r.operations.flatMap((o) => [
        [o.id, o.operation.label] as const,
        ...o.access.map((a) => [a.id, a.label] as const),
      ]),
    ),
  );
}

/** What a visit comes to, with the work its remedies share. */
export function describeVisit(
  visit: { readonly label: string; readonly odometerKm: number },
  remedies: readonly CarRemedy[],
  prices: RemedyPrices,
  rates: ShopRates,
): PlannedVisit {
  const operations = operationsOf(remedies);
  const labels = workLabels(remedies);
  const shared = new Map<string, SharedWork>();
  for (const share of prices.remedies.flatMap((p) => p.shares)) {
    const hours = operations.find((o) => o.id === share.id)?.hours;
    if (share.kind !== "operation" || hours === undefined || share.among.length < 2) continue;
    shared.set(share.id, {
      id: share.id,
      label: labels.get(share.id) ?? share.id,
      hours,
      cents: share.whole,
      among: share.among,
    });
  }
  const labour = operations.reduce((sum, o) => sum + roundToCents((rates.labourCentsPerHour * o.hours) / 100), 0);
  const visitCost = remedies.length > 0 ? rates.visitCents : 0;
  return {
    ...visit,
    remedies: remedies.map((r) => r.id),
    parts: prices.total - labour - visitCost,
    hours: operations.reduce((sum, o) => sum + o.hours, 0),
    labour,
    visitCost,
    total: prices.total,
    shared: [...shared.values()],
  };
}
