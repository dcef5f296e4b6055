import { describe, expect, it } from "vitest";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { planVisits } from "../../src/casework/cases/plan-visits.ts";
import {
  formatMoney,
  lifeWords,
  movedWithWords,
  nextWorkWords,
  planStatusWords,
  waitingCost,
  waitingWords,
} from "../../src/casework/cases/plan-words.ts";
import { remedyPriceLines, visitPriceLines } from "../../src/casework/cases/price-lines.ts";
import { usualPlan, withUsualVisits } from "../../src/casework/cases/usual-plan.ts";
import { look, operation, ouzel, rates, reading, record, solver, work } from "./made-visit.ts";

const TRAILING = "trailing-bushes@rear";
const DISCS = "front-discs@front";
const torn = () => look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] });
const thin = () =>
  [1, 2, 3, 4].map((i) => look("front-left/disc/thickness", reading("thickness", 0.0215, 0.000005, String(i))));
const appraise = (looks: readonly ReturnType<typeof look>[], change: Parameters<typeof record>[1] = {}) =>
  appraiseVisit(record(looks, change), solver);
const planned = (a: ReturnType<typeof appraise>, id: string) => {
  const found = a.plan.remedies.find((r) => r.remedy.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};

/** Chance of failing between two ages, by the band's 10 % and 90 % points, written out again. */
function failing(position: string, from: number, to: number): number {
  const band = ouzel().life.find((l) => l.position === position);
  if (!band) throw new Error(`no band for ${position}`);
  const shape = Math.log(Math.log(0.1) / Math.log(0.9)) / Math.log(band.highKm / band.lowKm);
  const hazard = (km: number): number => -Math.log(0.9) * (km / band.lowKm) ** shape;
  return 1 - Math.exp(hazard(from) - hazard(to));
}

describe("a visit's sum by hand", () => {
  it("counts shared work once, names it with who shares it, and re-adds", () => {
    const { plan } = appraise([torn(), ...thin()]);
    const [now] = plan.visits;
    // Own 2 x 1.0 + 2 x 0.8 h, four wheels 0.1 h, one lift 0.2 h; parts 2 x 40 + 2 x 90; the visit 25.
    expect(now?.hours).toBeCloseTo(4.2, 12);
    expect(now).toMatchObject({ parts: 26_000, labour: 37_800, visitCost: 2500, total: 66_300 });
    expect(now?.shared).toEqual([
      { id: "access/lift@car", label: "Lift and lower", hours: 0.2, cents: 1800, among: [DISCS, TRAILING] },
    ]);
    const shares = plan.remedies.flatMap((r) => r.price?.shares.filter((s) => s.id === "access/lift@car") ?? []);
    // In proportion to own labour, the wheels included: 1.8 h to 2.2 h of 18.00.
    expect(shares.map((s) => s.share)).toEqual([810, 990]);
  });
});

describe("what a price is made of", () => {
  it("stands line by line, hours by rate, and adds up to the price and to the visit", () => {
    const { plan } = appraise([torn(), ...thin()]);
    const { rates } = record([]);
    const sum = (cents: readonly (number | null)[]): number => cents.reduce<number>((all, c) => all + (c ?? 0), 0);
    for (const one of plan.remedies) {
      const lines = remedyPriceLines(one, plan, rates);
      expect(sum(lines.map((l) => l.cents))).toBe(one.price?.total);
      for (const line of lines) if (line.hours !== null) expect(line.whole).toBe(Math.round(9000 * line.hours));
    }
    const [now] = plan.visits;
    if (now === undefined) throw new Error("no visit");
    const whole = visitPriceLines(now, plan, rates);
    expect(sum(whole.map((l) => l.cents))).toBe(now.total);
    expect(whole.filter((l) => l.among.length > 0).map((l) => [l.label, l.among.length])).toEqual([
      ["Lift and lower", 2],
    ]);
    expect(whole.find((l) => l.kind === "part")).toMatchObject({ count: 1, each: 9000, whole: 9000 });
  });

  it("says of a part without a price that it is not on file, not that it costs nothing", () => {
    const made = record([torn()]);
    const free = { ...made.work, parts: made.work.parts.map((p) => ({ ...p, priceCents: null })) };
    const { plan } = appraiseVisit({ ...made, work: free }, solver);
    const [only] = plan.remedies;
    if (only === undefined) throw new Error("no remedy");
    const parts = remedyPriceLines(only, plan, made.rates).filter((l) => l.kind === "part");
    expect(parts.map((l) => l.cents)).toEqual([null, null]);
  });
});

describe("what is set to a visit by hand", () => {
  it("is done there and nowhere else, and the rest is planned around it", () => {
    for (const visit of [0, 1, 2]) {
      const plan = { ...usualPlan(90_000), fixed: [{ remedy: TRAILING, visit }] };
      const a = appraise([torn(), ...thin()], { plan });
      expect(planned(a, TRAILING).visit).toBe(visit);
      expect(planned(a, TRAILING).fixed).toBe(true);
      expect(planned(a, DISCS).visit).toBe(0);
      expect(a.plan.status).toBe("optimal");
    }
  });

  it("costs no less than the plan that is free to choose", () => {
    const free = appraise([torn(), ...thin()]).plan.cost ?? Number.NaN;
    const held = appraise([torn(), ...thin()], {
      plan: { ...usualPlan(90_000), fixed: [{ remedy: DISCS, visit: 1 }] },
    }).plan.cost;
    expect(held).toBeGreaterThanOrEqual(free);
  });
});

describe("what hand settings do to the rest", () => {
  const setAt = (id: string, visit: number) => ({ ...usualPlan(90_000), fixed: [{ remedy: id, visit }] });

  it("costs what the choice was said to cost before it was set, and its visits re-add", () => {
    for (const family of [ouzel(), { ...ouzel(), life: [] }]) {
      const before = appraise([torn(), ...thin()], { family });
      for (const { remedy, alternatives } of before.plan.remedies)
        for (const { visit, cost } of alternatives) {
          if (visit === null) continue;
          const { plan } = appraise([torn(), ...thin()], { family, plan: setAt(remedy.id, visit) });
          expect(plan.cost).toBe(cost);
          for (const [i, total] of plan.totals.entries()) {
            const prices = plan.remedies.flatMap((r) => (r.visit === i && r.price ? [r.price.total] : []));
            expect(prices.reduce((sum, p) => sum + p, 0)).toBe(total);
          }
        }
    }
  });

  it("is said: what moved with it, and that the plan is the cheapest under what was set", () => {
    const remedies = appraise([torn(), ...thin()]).remedies.map((r) => ({ ...r, grade: 2 as const }));
    const planFor = (document: ReturnType<typeof usualPlan>) =>
      planVisits({ ...ouzel(), life: [] }, [], remedies, document, rates, solver);
    const free = planFor(usualPlan(90_000));
    const at = free.visits.findIndex((v) => v.remedies.length === 2);
    expect(free.byHand).toBeNull();
    expect(movedWithWords(free)).toBe("");
    const held = planFor(setAt(DISCS, 1 - at));
    const [from, to] = [free.visits[at]?.label, free.visits[1 - at]?.label];
    expect(held.byHand).toMatchObject({ moved: [{ id: TRAILING, from: at, to: 1 - at }], freeCost: free.cost });
    expect(movedWithWords(held)).toBe(`Moved with it: Trailing link bushes (was: ${from}; now: ${to}).`);
    expect(planStatusWords(held, "EUR")).toMatch(
      /^Cheapest under what you set by hand, proved, without how long what 2 remedies renew would last \(not on file\)\./,
    );
    expect(planStatusWords(held, "EUR")).not.toContain("Best");
  });
});

describe("what stands on the job card before anything is agreed to", () => {
  it("says where the next work is planned and what it comes to, as the plan has it", () => {
    const now = appraise([torn()]);
    expect(nextWorkWords(now.plan, "EUR")).toMatch(/^Work for [\d. ]+ EUR without tax is planned for now/);
    const later = appraise([torn()], { plan: { ...usualPlan(90_000), fixed: [{ remedy: TRAILING, visit: 1 }] } });
    const sum = formatMoney(later.plan.totals[1] ?? 0, "EUR");
    expect(nextWorkWords(later.plan, "EUR")).toContain("Nothing is planned for now.");
    expect(nextWorkWords(later.plan, "EUR")).toContain(`for Next service at 105`);
    expect(nextWorkWords(later.plan, "EUR")).toContain(`${sum} without tax`);
    expect(nextWorkWords(appraise([]).plan, "EUR")).toBe("No work is planned.");
  });
});

describe("work that another remedy brings along", () => {
  const [bush] = appraise([torn()]).remedies;
  if (bush === undefined) throw new Error("no remedy");
  const align = {
    id: "align@car",
    operation: { ...operation("align", 1.2, "alignment"), scope: "car" as const, access: [] },
    corner: null,
    access: [],
  };
  const more = { ...bush, operations: [...bush.operations, align] };
  const less = {
    ...bush,
    id: "alignment@car",
    label: "Alignment",
    axle: null,
    grade: 1 as const,
    parts: [],
    operations: [align],
  };
  const plan = (fixed: readonly { readonly remedy: string; readonly visit: number }[]) => {
    const solved = planVisits(
      { ...ouzel(), life: [] },
      [],
      [more, less],
      { ...usualPlan(90_000), fixed: [...fixed] },
      rates,
      solver,
    );
    return { solved, own: solved.remedies.find(({ remedy }) => remedy.id === less.id) };
  };

  it("is done with it and in its price, agreed to at the same visit or not", () => {
    for (const fixed of [[], [{ remedy: less.id, visit: 0 }]]) {
      const { solved, own } = plan(fixed);
      expect(own).toMatchObject({ visit: 0, price: null, broughtBy: { by: TRAILING, visit: 0 } });
      expect(own?.why).toContain("Done with trailing link bushes, rear");
      expect(solved.remedies.find(({ remedy }) => remedy.id === TRAILING)?.price?.total).toBe(solved.totals[0]);
    }
  });

  it("has a price of its own where it is set to another visit", () => {
    const { own } = plan([{ remedy: less.id, visit: 1 }]);
    expect(own).toMatchObject({ visit: 1, broughtBy: null });
    expect(own?.price?.total).toBe(1.2 * 9000 + 2500);
  });
});

describe("what waiting costs", () => {
  it("is by hand: the same work later, and the risk of failing until then", () => {
    const a = appraise([torn()]);
    const bush = planned(a, TRAILING);
    const [now, next, , horizon] = [90_000, 105_000, 120_000, 127_500];
    const work = 2 * 9000 + 2 * 900 + 1800 + 8000 + 2500;
    const failure = 8000 + 18_000;
    const place = "rear/trailing-link/inner-bush";
    const cents = (amount: number): number => Math.floor(amount + 0.5);
    const later =
      work +
      cents(failing(place, now, next) * failure) +
      cents(0.97 * failing(place, 0, (horizon ?? 0) - (next ?? 0)) * failure);
    expect(bush.alternatives.find((c) => c.visit === 1)?.cost).toBe(later);
    const atOnce = work + cents(0.97 * failing(place, 0, (horizon ?? 0) - (now ?? 0)) * failure);
    expect(bush.alternatives.find((c) => c.visit === 0)?.cost).toBe(atOnce);
    expect(waitingCost(bush, 1)).toBe(later - atOnce);
    expect(waitingWords(bush, a.plan, "EUR")).toContain("more on average");
  });

  it("is the plan's own cost where a remedy stands, for every remedy", () => {
    const a = appraise([torn(), ...thin()]);
    for (const r of a.plan.remedies.filter((p) => p.alternatives.length > 0))
      expect(r.alternatives.find((c) => c.visit === r.visit)?.cost).toBe(a.plan.cost);
  });

  it("is not known where no life is on file, and says so", () => {
    const family = { ...ouzel(), life: [] };
    const a = appraise([torn()], { family });
    const bush = planned(a, TRAILING);
    expect(waitingCost(bush, 1)).toBeNull();
    expect(waitingWords(bush, a.plan, "EUR")).toContain("not known");
    expect(bush.riskTo.every((r) => r === null)).toBe(true);
  });
});

describe("how good the plan is", () => {
  it("is proved, or the gap is said, or why there is none", () => {
    const { plan } = appraise([torn()]);
    expect(planStatusWords(plan, "EUR")).toContain("proved");
    expect(planStatusWords({ ...plan, status: "limit", cost: 50_000, bound: 48_000 }, "EUR")).toContain(
      "20 EUR at most",
    );
    expect(planStatusWords({ ...plan, status: "infeasible", reasons: ["visit 1: budget 3"] }, "EUR")).toContain(
      "visit 1: budget 3",
    );
  });
});

describe("how long a part lasts from here", () => {
  it("is told given the distance it has lasted, and as a bound where the look found it worn", () => {
    const bush = planned(appraise([torn()]), TRAILING);
    const half = bush.halfGoneKm ?? Number.NaN;
    const place = "rear/trailing-link/inner-bush";
    expect(failing(place, 90_000, 90_000 + half)).toBeCloseTo(0.5, 3);
    expect(lifeWords(bush)).toMatch(/^Of such parts that are sound after 90\u00a0000 km, half are gone within/);
    expect(lifeWords(bush)).toContain("found worn: count on less");
    expect(bush.remaining).toMatchObject({ ageKm: 90_000, ageFrom: "odometer", sound: false });
    expect(waitingWords(bush, appraise([torn()]).plan, "EUR")).toContain("costs at least");
    const cracked = look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["surface-cracks"] });
    expect(lifeWords(planned(appraise([cracked]), TRAILING))).not.toContain("count on less");
  });

  it("of a part that wears counts from how far it is worn, not from the odometer", () => {
    const family = ouzel();
    const whole = family.front.brake.discThickness;
    const band = {
      position: "front/disc/thickness",
      lowKm: 40_000,
      middleKm: 60_000,
      highKm: 90_000,
      source: "invented",
    };
    const limit = 0.022;
    const thickness = whole - 0.25 * (whole - limit);
    const place = "front-left/disc/thickness";
    const seen = [
      ...[1, 2, 3, 4].map((i) => look(place, reading("thickness", thickness, 0.000002, String(i)))),
      look(place, { kind: "signs", signs: ["scored"] }),
    ];
    const disc = planned(appraise(seen, { family: { ...family, life: [band] } }), DISCS);
    // A quarter of what may wear is gone: a quarter of the median of the band's own Weibull.
    const shape = Math.log(Math.log(0.1) / Math.log(0.9)) / Math.log(90_000 / 40_000);
    const median = 40_000 * (Math.LN2 / -Math.log(0.9)) ** (1 / shape);
    expect(disc.remaining?.ageFrom).toBe("wear");
    expect(disc.remaining?.ageKm).toBeCloseTo(median / 4, 3);
  });
});

describe("a plan without visits", () => {
  it("says that none are set, and takes the usual ones", () => {
    const empty = { ...usualPlan(90_000), visits: [] };
    const a = appraise([torn()], { plan: empty });
    expect(planStatusWords(a.plan, "EUR")).toContain("No visits are set");
    expect(planStatusWords(appraise([]).plan, "EUR")).toBe("Nothing asks for work.");
    const set = withUsualVisits({ ...empty, declined: [DISCS] }, 91_000);
    expect(set.visits.map((v) => v.odometerKm)).toEqual([91_000, 106_000, 121_000]);
    expect(set.declined).toEqual([DISCS]);
    expect(planned(appraise([torn()], { plan: set }), TRAILING).visit).toBe(0);
  });
});

describe("what the proof of a plan leaves out", () => {
  it("is said where parts have no price or no life is on file, and only there", () => {
    const looks = [look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] })];
    const words = (change: Partial<typeof work>) =>
      planStatusWords(appraiseVisit(record(looks, { work: { ...work, ...change } }), solver).plan, "EUR");
    expect(words({})).toMatch(/^Best plan, proved: no split/);
    const parts = work.parts.map((part) => ({ ...part, priceCents: null }));
    expect(words({ parts })).toMatch(
      /^Best plan over what is on file, proved, without the price of 2 parts \(not on file\)/,
    );
    const noLife = appraiseVisit(record(looks, { family: { ...ouzel(), life: [] } }), solver).plan;
    expect(planStatusWords(noLife, "EUR")).toContain("how long what 1 remedy renews would last (not on file)");
  });
});
