import { type Cents, roundToCents, splitCents } from "./cents.ts";
import { closeOperations } from "./closure.ts";
import type { AlignmentRule, Operation } from "./instance.ts";

/** What prices are made from, for one visit; whole cents. */
export interface PriceBook {
  /** Cents per hour. */
  readonly labourRate: Cents;
  readonly operations: readonly Operation[];
  readonly hardware: readonly { readonly id: string; readonly price: Cents }[];
  /** Kits that are bought; each covers its parts, whichever remedies they belong to. */
  readonly kits: readonly { readonly id: string; readonly contents: readonly string[]; readonly price: Cents }[];
  /** Once per visit. */
  readonly visitCost: Cents;
  readonly alignment: AlignmentRule | null;
}

/** What cures findings and is agreed to as a whole. */
export interface Remedy {
  readonly id: string;
  /** Operations it names itself; what these need is added. */
  readonly operations: readonly string[];
  readonly parts: readonly { readonly id: string; readonly price: Cents }[];
}

/** A part of something that several remedies need once. */
export interface PriceShare {
  readonly kind: "operation" | "hardware" | "part" | "kit" | "visit";
  /** "" for the visit itself. */
  readonly id: string;
  readonly whole: Cents;
  readonly share: Cents;
  /** Every remedy that shares it, this one included. */
  readonly among: readonly string[];
}

export interface RemedyPrice {
  readonly id: string;
  readonly parts: Cents;
  readonly hardware: Cents;
  /** Labour of operations no other agreed remedy needs. */
  readonly ownLabour: Cents;
  readonly shares: readonly PriceShare[];
  readonly total: Cents;
}

export interface RemedyPrices {
  readonly remedies: readonly RemedyPrice[];
  /** Sum of the remedies' totals, which is what the visit costs. */
  readonly total: Cents;
}

/** What belongs to a remedy outright where no other needs it; kits and the visit always stand as lines of their own. */
const OWN: ReadonlySet<PriceShare["kind"]> = new Set(["operation", "hardware", "part"]);

interface Line {
  readonly kind: PriceShare["kind"];
  readonly id: string;
  readonly whole: Cents;
  /** Indices of the remedies that need it, rising. */
  readonly users: readonly number[];
  /** Weights of the users; null: their own labour. */
  readonly weights: readonly number[] | null;
}

/** Operations a remedy brings into the visit, the alignment it asks for included. */
function operationsOf(book: PriceBook, remedy: Remedy): string[] {
  const unknown = remedy.operations.find((id) => !book.operations.some((o) => o.id === id));
  if (unknown !== undefined) throw new Error(`${unknown} is named but not listed`);
  const done = closeOperations(book.operations, remedy.operations);
  const rule = book.alignment;
  const asks =
    rule !== null &&
    (remedy.parts.some((p) => rule.ifParts.includes(p.id)) || done.some((o) => rule.ifOperations.includes(o)));
  return asks ? closeOperations(book.operations, [...done, rule.operation]) : done;
}

/** Everything the visit costs, line by line, with the remedies that need each line. */
function listLines(book: PriceBook, remedies: readonly Remedy[]): Line[] {
  const done = remedies.map((remedy) => operationsOf(book, remedy));
  const who = (needs: (remedy: number) => boolean): number[] => remedies.flatMap((_, i) => (needs(i) ? [i] : []));
  const lines: Line[] = [];
  for (const o of book.operations) {
    const users = who((i) => done[i]?.includes(o.id) ?? false);
    lines.push({
      kind: "operation",
      id: o.id,
      whole: roundToCents((book.labourRate * o.hours) / 100),
      users,
      weights: null,
    });
  }
  for (const h of book.hardware) {
    const disturbing = book.operations.filter((o) => o.disturbs.includes(h.id));
    const users = who((i) => disturbing.some((o) => done[i]?.includes(o.id)));
    lines.push({ kind: "hardware", id: h.id, whole: h.price, users, weights: null });
  }
  const covered = new Set(book.kits.flatMap((k) => k.contents));
  for (const kit of book.kits) {
    const worth = remedies.map((r) => r.parts.filter((p) => kit.contents.includes(p.id)));
    const users = who((i) => (worth[i]?.length ?? 0) > 0);
    const weights = users.map((i) => (worth[i] ?? []).reduce((sum, p) => sum + p.price, 0));
    lines.push({ kind: "kit", id: kit.id, whole: kit.price, users, weights });
  }
  const singles = new Map(remedies.flatMap((r) => r.parts).map((p) => [p.id, p.price]));
  for (const [id, price] of singles) {
    if (covered.has(id)) continue;
    const users = who((i) => remedies[i]?.parts.some((p) => p.id === id) ?? false);
    lines.push({ kind: "part", id, whole: price, users, weights: null });
  }
  lines.push({ kind: "visit", id: "", whole: book.visitCost, users: who(() => true), weights: null });
  return lines.filter((line) => line.users.length > 0);
}

/**
 * Prices of the remedies agreed to for one visit: what only this one needs, and of everything several need its share in
 * proportion to own labour (a kit: to what its parts would cost singly; equal where all are nought). Whole cents; the
 * totals re-add to the visit exactly. Decline one by leaving it out: the others are repriced.
 */
export function computeRemedyPrices(book: PriceBook, remedies: readonly Remedy[]): RemedyPrices {
  const lines = listLines(book, remedies);
  const alone = (i: number, kind: Line["kind"]): Cents =>
    lines
      .filter((l) => l.kind === kind && l.users.length === 1 && l.users[0] === i)
      .reduce((sum, l) => sum + l.whole, 0);
  const ownLabour = remedies.map((_, i) => alone(i, "operation"));
  const shares = remedies.map((): PriceShare[] => []);
  for (const { kind, id, whole, users, weights } of lines) {
    if (users.length === 1 && OWN.has(kind)) continue;
    const among = users.map((i) => remedies[i]?.id ?? "");
    const split = splitCents(whole, weights ?? users.map((i) => ownLabour[i] as number));
    users.forEach((i, n) => {
      if (whole !== 0) shares[i]?.push({ kind, id, whole, share: split[n] as number, among });
    });
  }
  const prices = remedies.map((remedy, i): RemedyPrice => {
    const parts = alone(i, "part");
    const hardware = alone(i, "hardware");
    const own = shares[i] as readonly PriceShare[];
    const labour = ownLabour[i] as number;
    const total = parts + hardware + labour + own.reduce((sum, s) => sum + s.share, 0);
    return { id: remedy.id, parts, hardware, ownLabour: labour, shares: own, total };
  });
  return { remedies: prices, total: prices.reduce((sum, p) => sum + p.total, 0) };
}
