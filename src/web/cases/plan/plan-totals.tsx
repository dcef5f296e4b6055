import { formatMoney, formatNumber, type PlannedVisit, type VisitPlan } from "#casework";

interface PlanTotalsProps {
  readonly plan: VisitPlan;
  readonly currency: string;
  readonly labourCentsPerHour: number;
  readonly taxShare: number;
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
export const PlanTotals = ({ plan, currency, labourCentsPerHour, taxShare }: PlanTotalsProps) => {
  const row = (head: string, of: (visit: PlannedVisit) => string, strong = false) => (
    <tr className={strong ? "plan-total" : undefined}>
      <th scope="row">{head}</th>
      {plan.visits.map((visit) => (
        <td key={visit.label} className={visit.remedies.length === 0 ? "plan-nothing" : undefined}>
          {visit.remedies.length === 0 ? (strong ? "nothing planned" : "") : of(visit)}
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
            <th key={visit.label} scope="col">
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
        {row("without tax", (v) => formatMoney(v.total, currency), true)}
        {row(`with tax, ${formatNumber(100 * taxShare, 0)} %`, (v) =>
          formatMoney(Math.round(v.total * (1 + taxShare)), currency),
        )}
      </tbody>
    </table>
  );
};
