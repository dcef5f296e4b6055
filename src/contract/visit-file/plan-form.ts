import type { Appraisal, PlannedRemedy, PlannedVisit } from "#casework";

type Wire = Readonly<Record<string, unknown>>;

const formatVisit = (visit: PlannedVisit): Wire => ({
  label: visit.label,
  odometer_km: visit.odometerKm,
  remedies: visit.remedies,
  parts_cents: visit.parts,
  hours_h: visit.hours,
  labour_cents: visit.labour,
  visit_cents: visit.visitCost,
  total_cents: visit.total,
  shared: visit.shared.map(({ id, label, hours, cents, among }) => ({
    id,
    label,
    hours_h: hours,
    whole_cents: cents,
    among,
  })),
});

const formatRemedy = (planned: PlannedRemedy): Wire => ({
  remedy: planned.remedy.id,
  label: planned.remedy.label,
  grade: planned.remedy.grade,
  cures: planned.remedy.findings.map((f) => f.place),
  visit: planned.visit,
  declined: planned.declined,
  agreed: planned.agreed,
  fixed: planned.fixed,
  accepted: planned.accepted,
  price: planned.price && {
    parts_cents: planned.price.parts,
    own_labour_cents: planned.price.ownLabour,
    shares: planned.price.shares.map(({ kind, id, whole, share, among }) => ({
      kind,
      id,
      whole_cents: whole,
      share_cents: share,
      among,
    })),
    total_cents: planned.price.total,
  },
  price_complete: planned.priceComplete,
  half_gone_km: planned.halfGoneKm,
  life_source: planned.remaining?.source ?? null,
  lasted_km: planned.remaining?.ageKm ?? null,
  lasted_from: planned.remaining?.ageFrom ?? null,
  found_sound: planned.remaining?.sound ?? null,
  risk_to: planned.riskTo,
  alternatives: planned.alternatives.map(({ visit, cost }) => ({ visit, cost_cents: cost })),
  why: planned.why,
});

/** The plan as JSON; `visit` is the index of a visit, null where a remedy is not within the plan. */
export const formatPlan = ({
  plan,
  planDocument,
  covered,
}: Pick<Appraisal, "plan" | "planDocument" | "covered">): Wire => ({
  status: plan.status,
  cost_cents: plan.cost,
  bound_cents: plan.bound,
  reasons: plan.reasons,
  horizon_km: planDocument.horizonKm,
  visits: plan.visits.map(formatVisit),
  remedies: plan.remedies.map(formatRemedy),
  left_out: covered.map(({ id, label, by, why }) => ({ remedy: id, label, by, why })),
});
