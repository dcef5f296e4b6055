import { centsOf, type Exact, exact, isMore, sum, times } from "./exact-number.ts";
import type { InstanceRecord, LifeRecord, PartRecord, UpgradeRecord } from "./instance-record.ts";

/** Complementary error function by the trapezoidal rule on its integral form; independent of the program's own. */
function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x);
  // erfc(x) = 2/sqrt(pi) exp(-x^2) * integral over t > 0 of exp(-t^2 - 2xt).
  const n = 4000;
  const h = 8 / n;
  let total = 0.5;
  for (let i = 1; i <= n; i++) total += Math.exp(-((i * h) ** 2) - 2 * x * i * h);
  // Euler-Maclaurin end correction: the slope at 0 is -2x, the third derivative 12x - 8x^3.
  const integral = h * total - (h ** 2 / 12) * 2 * x - (h ** 4 / 720) * (12 * x - 8 * x ** 3);
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * integral;
}

export function survival(life: LifeRecord, age: number): number {
  if (age <= 0) return 1;
  if (life.family === "weibull") return Math.exp(-((age / life.scale) ** life.shape));
  return 0.5 * erfc(Math.log(age / life.median) / life.sigma / Math.sqrt(2));
}

const median = (life: LifeRecord): number =>
  life.family === "lognormal" ? life.median : life.scale * Math.log(2) ** (1 / life.shape);

/** Plans of one instance priced in exact decimals; written apart from the program, visit by visit. */
export class ExactPlan {
  readonly last: number;
  readonly parts: ReadonlyMap<string, PartRecord>;
  readonly upgrades: ReadonlyMap<string, UpgradeRecord>;
  private readonly needed = new Map<string, ReadonlySet<string>>();

  constructor(readonly instance: InstanceRecord) {
    this.last = instance.visits.length;
    this.parts = new Map(instance.parts.map((p) => [p.id, p]));
    this.upgrades = new Map((instance.upgrades ?? []).map((u) => [u.id, u]));
    for (const o of instance.operations) this.needed.set(o.id, this.reach(o.id));
  }

  private reach(start: string): ReadonlySet<string> {
    const got = new Set([start]);
    for (let grown = true; grown; ) {
      grown = false;
      for (const o of this.instance.operations.filter((o) => got.has(o.id))) {
        for (const q of o.needs ?? []) {
          if (!got.has(q)) {
            got.add(q);
            grown = true;
          }
        }
      }
    }
    return got;
  }

  /** The operation with everything it needs. */
  below(operation: string): ReadonlySet<string> {
    return this.needed.get(operation) ?? new Set();
  }

  discount(t: number): Exact {
    return exact(t > this.last ? this.instance.end_discount : this.visit(t).discount);
  }

  visit(t: number): InstanceRecord["visits"][number] {
    const visit = this.instance.visits[t - 1];
    if (!visit) throw new Error(`no visit ${t}`);
    return visit;
  }

  miles(t: number): number {
    return t > this.last ? this.instance.horizon_miles : this.visit(Math.max(t, 1)).miles;
  }

  /** Cents of one unit from s to t, or null where that is not allowed. */
  span(id: string, s: number, t: number): number | null {
    const p = this.parts.get(id);
    if (!p) throw new Error(`no part ${id}`);
    const start = s === 0 ? p.age_now : 0;
    const end = start + this.miles(t) - this.miles(s);
    if (s === 0 && t > 1 && p.must_now) return null;
    if (p.max_age != null && end > p.max_age + 1e-9) return null;
    if (!p.life) return 0;
    const failure = end > start ? 1 - survival(p.life, end) / survival(p.life, start) : 0;
    if (p.p_max != null && failure > p.p_max + 1e-12) return null;
    const factor = Number(t > this.last ? this.instance.end_discount : this.visit(t).discount);
    let amount = factor * failure * (p.fail_cost ?? 0);
    if (t === this.last + 1)
      amount -= factor * (p.end_value_share ?? 0) * p.price * Math.max(0, 1 - end / median(p.life));
    return centsOf(exact(amount.toFixed(12)));
  }

  upgradeCents(u: UpgradeRecord, t: number): number {
    const distance = exact(this.instance.horizon_miles - this.miles(t));
    const benefit = times(times(exact(u.benefit_per_1000), distance), { units: 1n, scale: 3 });
    return centsOf(times(this.discount(t), exact(u.price))) - centsOf(benefit);
  }

  /** Hours, undiscounted spend and discounted cents of a visit done with these operations and purchases. */
  priceVisit(t: number, items: readonly string[], operations: ReadonlySet<string>, kits: ReadonlySet<string>) {
    const { instance } = this;
    const rate = exact(instance.labour_rate);
    const done = instance.operations.filter((o) => operations.has(o.id));
    const disturbed = new Set(done.flatMap((o) => o.disturbs ?? []));
    const bought = (instance.kits ?? []).filter((k) => kits.has(k.id));
    const covered = new Set(bought.flatMap((k) => k.contents));
    const amounts = [
      exact(this.visit(t).fixed_cost),
      ...done.map((o) => times(rate, exact(o.hours))),
      ...(instance.hardware ?? []).filter((h) => disturbed.has(h.id)).map((h) => exact(h.price)),
      ...bought.map((k) => exact(k.price)),
      ...items.flatMap((i) => {
        const part = this.parts.get(i);
        return part && !covered.has(i) ? [exact(part.price)] : [];
      }),
    ];
    const ups = items.flatMap((i) => this.upgrades.get(i) ?? []);
    return {
      hours: sum(done.map((o) => exact(o.hours))),
      spend: sum([...amounts, ...ups.map((u) => exact(u.price))]),
      cents:
        amounts.reduce((total, a) => total + centsOf(times(this.discount(t), a)), 0) +
        ups.reduce((total, u) => total + this.upgradeCents(u, t), 0),
    };
  }

  isOverCaps(t: number, priced: { readonly hours: Exact; readonly spend: Exact }): boolean {
    const { bay_hours: hours, budget } = this.visit(t);
    return (
      (hours != null && isMore(priced.hours, exact(hours))) || (budget != null && isMore(priced.spend, exact(budget)))
    );
  }

  /** Every set of operations that gives access to these items, each with what it needs and the alignment it asks for. */
  ways(items: readonly string[]): ReadonlySet<string>[] {
    const { alignment } = this.instance;
    let ways: ReadonlySet<string>[] = [new Set()];
    for (const id of items) {
      for (const group of (this.parts.get(id) ?? this.upgrades.get(id))?.access ?? []) {
        ways = ways.flatMap((way) => group.map((o) => new Set([...way, ...this.below(o)])));
      }
    }
    return ways.map((way) => {
      const asks =
        alignment &&
        (items.some((i) => alignment.if_parts.includes(i)) || [...way].some((o) => alignment.if_ops.includes(o)));
      return asks ? new Set([...way, ...this.below(alignment.op)]) : way;
    });
  }

  /** Fewest cents of a visit that fits exactly these items, or null where its limits forbid it. */
  cheapestVisit(t: number, items: readonly string[]): number | null {
    if (items.length === 0) return 0;
    const useful = (this.instance.kits ?? []).filter((k) => k.contents.some((c) => items.includes(c)));
    let best: number | null = null;
    for (const way of this.ways(items)) {
      for (let mask = 0; mask < 2 ** useful.length; mask++) {
        const kits = new Set(useful.filter((_, k) => mask & (1 << k)).map((k) => k.id));
        const priced = this.priceVisit(t, items, way, kits);
        if (!this.isOverCaps(t, priced) && (best === null || priced.cents < best)) best = priced.cents;
      }
    }
    return best;
  }
}

/** Optimum in cents by trying every plan, or null where there is none; for small instances only. */
export function enumerate(instance: InstanceRecord): number | null {
  const model = new ExactPlan(instance);
  const { last } = model;
  const dates = Array.from({ length: 2 ** last }, (_, mask) =>
    Array.from({ length: last }, (_v, i) => i + 1).filter((t) => mask & (1 << (t - 1))),
  );
  const choices: { readonly id: string; readonly dates: readonly number[]; readonly cents: number }[][] = [];
  for (const id of model.parts.keys()) {
    choices.push(
      dates.flatMap((when) => {
        const spans = [...when, last + 1].map((to, i) => model.span(id, when[i - 1] ?? 0, to));
        return spans.includes(null)
          ? []
          : [{ id, dates: when, cents: spans.reduce<number>((a, b) => a + (b ?? 0), 0) }];
      }),
    );
  }
  for (const u of model.upgrades.values()) {
    choices.push(dates.filter((w) => w.length <= 1).map((when) => ({ id: u.id, dates: when, cents: 0 })));
  }
  const visits = new Map<string, number | null>();
  const visitCents = (t: number, items: readonly string[]): number | null => {
    const key = `${t} ${items.join(" ")}`;
    const known = visits.get(key);
    if (known !== undefined) return known;
    const cents = model.cheapestVisit(t, items);
    visits.set(key, cents);
    return cents;
  };
  let best: number | null = null;
  const plan = new Map<string, readonly number[]>();
  const go = (level: number, cents: number): void => {
    const options = choices[level];
    if (options) {
      for (const option of options) {
        plan.set(option.id, option.dates);
        go(level + 1, cents + option.cents);
      }
      return;
    }
    if (findBrokenDate(model, plan) !== null) return;
    let total = cents;
    for (let t = 1; t <= last; t++) {
      const visit = visitCents(
        t,
        [...plan].filter(([, when]) => when.includes(t)).map(([id]) => id),
      );
      if (visit === null) return;
      total += visit;
    }
    if (best === null || total < best) best = total;
  };
  go(0, 0);
  return best;
}

/** The first rule on pairs and upgrades that these dates break, or null. */
export function findBrokenDate(model: ExactPlan, plan: ReadonlyMap<string, readonly number[]>): string | null {
  const at = (id: string): readonly number[] => plan.get(id) ?? [];
  for (const pair of model.instance.pairs ?? []) {
    if (new Set(pair.map((id) => at(id).join())).size > 1) return `pair ${pair.join()} split`;
  }
  for (const u of model.upgrades.values()) {
    const by = u.required_by;
    if (at(u.id).length > 1 || (by != null && !at(u.id).some((t) => t <= by))) return `${u.id}: number or date`;
    for (const t of at(u.id)) {
      const bare = u.requires.find((b) => !model.parts.get(b)?.condition_ok && !at(b).some((s) => s <= t));
      if (bare !== undefined) return `${u.id}: ${bare} not renewed before`;
    }
  }
  return null;
}
