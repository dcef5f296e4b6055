import type { ReactNode } from "react";
import { formatMoney, formatNumber, type PlannedVisit, type VisitPlan } from "#casework";

interface PlanTotalsProps {
  readonly plan: VisitPlan;
  readonly currency: string;
  readonly labourCentsPerHour: number;
  readonly taxShare: number;
  /** Index of the visit whose sum is open; null: none. */
  readonly opened: number | null;
  readonly onOpen: (visit: number) => void;
}

/** A visit's parts, and whether all of them have a price. */
const partsOf = ({ remedies }: VisitPlan, visit: PlannedVisit, currency: string): string => {
  const complete = remedies.every((r) => !visit.remedies.includes(r.remedy.id) || r.priceComplete);
  return complete
    ? formatMoney(visit.parts, currency)
    : visit.parts === 0
      ? "not on file"
      : `${formatMoney(visit.parts, currency)}, some not on file`;
};

/** What every visit comes to: parts, labour with the shared work once, the visit itself; without and with tax. */
export const PlanTotals = ({ plan, currency, labourCentsPerHour, taxShare, opened, onOpen }: PlanTotalsProps) => {
  const sum = (visit: PlannedVisit, index: number) => (
    <button
      type="button"
      className="plan-sum-opens"
      aria-pressed={index === opened}
      aria-label={`What ${formatMoney(visit.total, currency)} for ${visit.label} is made of`}
      onClick={() => onOpen(index)}
    >
      {formatMoney(visit.total, currency)}
    </button>
  );
  const row = (head: string, of: (visit: PlannedVisit, index: number) => ReactNode, strong = false) => (
    <tr className={strong ? "plan-total" : undefined}>
      <th scope="row">{head}</th>
      {plan.visits.map((visit, index) => (
        <td key={visit.odometerKm} className={visit.remedies.length === 0 ? "plan-nothing" : undefined}>
          {visit.remedies.length === 0 ? (strong ? "nothing planned" : "") : of(visit, index)}
        </td>
      ))}
    </tr>
  );
  return (
    <table className="plan-totals">
      <thead>
        <tr>
          <th scope="col">visit</th>
          {plan.visits.map((visit) => (
            <th key={visit.odometerKm} scope="col">
              {visit.label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {row("parts", (v) => partsOf(plan, v, currency))}
        {row(
          `labour at ${formatMoney(labourCentsPerHour, currency)}/h, shared once`,
          (v) => `${formatNumber(v.hours, 1)} h  ${formatMoney(v.labour, currency)}`,
        )}
        {row("the visit itself", (v) => formatMoney(v.visitCost, currency))}
        {row("without tax", sum, true)}
        {row(`with tax, ${formatNumber(100 * taxShare, 0)} %`, (v) =>
          formatMoney(Math.round(v.total * (1 + taxShare)), currency),
        )}
      </tbody>
    </table>
  );
};
