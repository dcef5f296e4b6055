import { formatMoney, type PlannedRemedy, type VisitPlan } from "#casework";

interface ChoiceCostsProps {
  readonly planned: PlannedRemedy;
  readonly plan: VisitPlan;
  readonly currency: string;
  readonly onFix: (visit: number) => void;
}

/** What the whole plan costs with this remedy at each visit, risk counted; one tap sets it there. */
export const ChoiceCosts = ({ planned, plan, currency, onFix }: ChoiceCostsProps) => {
  const costs = new Map(planned.alternatives.map((a) => [a.visit, a.cost]));
  const all = [...costs.values()];
  const most = Math.max(1, ...all);
  const least = Math.min(...all);
  return (
    <section className="choice-costs" aria-label="Cost of the choice">
      <h3 className="margin-title">
        {planned.remaining === null
          ? "What the plan costs with it there; the risk of waiting is not known"
          : "What the plan is expected to cost with it there"}
      </h3>
      {plan.visits.map((visit, i) => {
        const cost = costs.get(i);
        return (
          <button
            key={visit.odometerKm}
            type="button"
            className="choice-cost"
            aria-pressed={planned.visit === i}
            onClick={() => onFix(i)}
          >
            <span>{visit.label}</span>
            <span className="choice-money">{cost === undefined ? "not known" : formatMoney(cost, currency)}</span>
            <span className="suspect-bar" aria-hidden="true">
              {cost === undefined ? null : <span style={{ width: `${(100 * cost) / most}%` }} />}
            </span>
            <span className="note">
              {planned.visit === i ? (planned.fixed ? "set by hand" : "planned") : "set it here"}
              {cost !== undefined && cost === least && all.length > 1 ? ", costs least" : ""}
            </span>
          </button>
        );
      })}
    </section>
  );
};
