import type { z } from "zod";
import { amountOf, type InfeasibleReason, type Part, type PlanAnswer, type PlanInstance } from "#engines/planning";
import type { planOutput, WirePlan } from "./planning-schema.ts";

type WireAnswer = z.output<typeof planOutput>;

function partFromWire(p: WirePlan["parts"][number]): Part {
  return {
    id: p.id,
    price: p.price,
    access: p.access,
    ageNow: p.age_now,
    maxAge: p.max_age ?? null,
    mustNow: p.must_now ?? false,
    conditionOk: p.condition_ok ?? false,
    wear: p.life
      ? { life: p.life, failCost: p.fail_cost ?? 0, mostRisk: p.p_max ?? null, endValueShare: p.end_value_share ?? 0 }
      : null,
  };
}

/** An instance as it comes over the wire, for the engine; its names are resolved. */
export function planFromWire(wire: WirePlan): PlanInstance {
  const { alignment } = wire;
  return {
    labourRate: wire.labour_rate,
    horizon: wire.horizon_miles,
    endDiscount: wire.end_discount,
    visits: wire.visits.map((v) => ({
      odometer: v.miles,
      discount: v.discount,
      fixedCost: v.fixed_cost,
      bayHours: v.bay_hours ?? null,
      budget: v.budget ?? null,
    })),
    parts: wire.parts.map(partFromWire),
    pairs: wire.pairs ?? [],
    operations: wire.operations.map((o) => ({
      id: o.id,
      hours: o.hours,
      needs: o.needs ?? [],
      disturbs: o.disturbs ?? [],
    })),
    hardware: wire.hardware ?? [],
    kits: wire.kits ?? [],
    upgrades: (wire.upgrades ?? []).map((u) => ({
      id: u.id,
      price: u.price,
      access: u.access,
      requires: u.requires,
      requiredBy: u.required_by ?? null,
      benefitPer1000: u.benefit_per_1000,
    })),
    alignment: alignment
      ? { operation: alignment.op, ifParts: alignment.if_parts, ifOperations: alignment.if_ops }
      : null,
  };
}

function formatReason(reason: InfeasibleReason): NonNullable<WireAnswer["blocked_by"]>[number] {
  const nothing = { visit: null, part: null, limit: null, least: null };
  if (reason.kind === "part") return { ...nothing, by: "part", part: reason.id };
  if (reason.kind === "rules") return { ...nothing, by: "rules" };
  const by = reason.cap.kind === "bay-hours" ? "bay_hours" : "budget";
  return { ...nothing, by, visit: reason.cap.visit, limit: reason.most, least: reason.least };
}

const moneyOrNull = (cents: number | null): number | null => (cents === null ? null : amountOf(cents));

/** The engine's answer in the form of the wire. */
export function formatPlanAnswer(answer: PlanAnswer): WireAnswer {
  if (answer.status === "infeasible")
    return { status: "infeasible", cost: null, bound: null, choices: [], blocked_by: answer.reasons.map(formatReason) };
  return {
    status: answer.status,
    cost: moneyOrNull(answer.cost),
    bound: moneyOrNull(answer.bound),
    choices: answer.visits.map((v) => ({
      visit: v.visit,
      replace: [...v.replace],
      operations: [...v.operations],
      kits: [...v.kits],
      hours: v.hours,
      spend: v.spend,
    })),
  };
}
