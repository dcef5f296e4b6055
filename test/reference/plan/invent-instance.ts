import { seededRandom } from "#numeric";
import type { InstanceRecord, LifeRecord } from "./instance-record.ts";

/** A small invented instance: every feature of the model turns up over a few dozen seeds, infeasible ones too. */
export function inventInstance(seed: number): InstanceRecord {
  const random = seededRandom(seed);
  const whole = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const chance = (p: number): boolean => random() < p;
  const money = (low: number, high: number): number => whole(low * 100, high * 100) / 100;
  const some = <T>(list: readonly T[], p: number): T[] => list.filter(() => chance(p));
  const visits = whole(1, 3);
  const parts = Array.from({ length: whole(2, 4) }, (_, i) => `part${i}`);
  const operations = ["lift", "wheel", "arm", "press", "other", "align"];
  const hardware = ["bolt", "nut"];
  const needs: Readonly<Record<string, readonly string[]>> = {
    wheel: ["lift"],
    arm: ["wheel"],
    press: ["arm"],
    other: ["wheel"],
    align: ["lift"],
  };
  const now = 60_000;
  const life = (): LifeRecord =>
    chance(0.5)
      ? { family: "weibull", shape: whole(15, 60) / 10, scale: whole(50, 110) * 1000 }
      : { family: "lognormal", median: whole(50, 110) * 1000, sigma: whole(2, 8) / 10 };
  const access = (): string[][] =>
    Array.from({ length: whole(0, 2) }, () => {
      const group = some(operations.slice(1, 5), 0.4);
      return group.length > 0 ? group : ["wheel"];
    });
  const withUpgrade = chance(0.5);
  const items = withUpgrade ? [...parts, "firmer"] : parts;
  return {
    name: `invented ${seed}`,
    labour_rate: whole(50, 95),
    horizon_miles: now + visits * 15_000,
    end_discount: whole(8000, 9999) / 10_000,
    visits: Array.from({ length: visits }, (_, t) => ({
      miles: now + t * 15_000,
      discount: 1 - (t * whole(100, 400)) / 10_000,
      fixed_cost: t === 0 ? 0 : whole(0, 60),
      bay_hours: chance(0.4) ? whole(5, 40) / 10 : null,
      budget: chance(0.3) ? money(60, 500) : null,
    })),
    parts: parts.map((id) => ({
      id,
      price: money(10, 120),
      access: access(),
      age_now: whole(0, 70) * 1000,
      life: chance(0.9) ? life() : null,
      fail_cost: whole(50, 400),
      p_max: chance(0.3) ? whole(20, 90) / 100 : null,
      max_age: chance(0.2) ? whole(60, 120) * 1000 : null,
      must_now: chance(0.15),
      end_value_share: whole(0, 10) / 10,
      condition_ok: chance(0.4),
    })),
    pairs: chance(0.3) ? [parts.slice(0, 2)] : [],
    operations: operations.map((id) => ({
      id,
      hours: whole(0, 12) / 10,
      needs: needs[id] ?? [],
      disturbs: some(hardware, 0.2),
    })),
    hardware: hardware.map((id) => ({ id, price: money(2, 20) })),
    kits: Array.from({ length: whole(0, 2) }, (_, k) => ({
      id: `kit${k}`,
      contents: some(parts, 0.6),
      price: money(20, 120),
    })),
    upgrades: withUpgrade
      ? [
          {
            id: "firmer",
            price: money(20, 200),
            access: access(),
            requires: some(parts, 0.5),
            required_by: chance(0.4) ? whole(1, visits) : null,
            benefit_per_1000: whole(0, 12),
          },
        ]
      : [],
    alignment: chance(0.6) ? { op: "align", if_parts: some(items, 0.4), if_ops: some(["arm", "press"], 0.5) } : null,
  };
}
