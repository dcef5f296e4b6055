import { formatMoney, type PlannedVisit, type ShopRates, type VisitPlan, visitPriceLines } from "#casework";
import { PriceTable } from "./price-lines.tsx";

interface VisitSumMarginProps {
  readonly visit: PlannedVisit;
  readonly plan: VisitPlan;
  readonly rates: ShopRates;
  readonly isUsual: boolean;
}

/** What one visit comes to, opened: every part, every piece of work once, and the visit itself. */
export const VisitSumMargin = ({ visit, plan, rates, isUsual }: VisitSumMarginProps) => (
  <>
    <p className="label">Sum of the visit</p>
    <h2 className="heading">{visit.label}</h2>
    <p className="figure-large plan-figure">{formatMoney(visit.total, rates.currency)}</p>
    <p className="label">without tax; each line stands once, however many remedies need it</p>
    <PriceTable
      lines={visitPriceLines(visit, plan, rates)}
      rates={rates}
      total={visit.total}
      whole={true}
      relation="Parts and pieces of work of all remedies of the visit, each counted once, and the visit itself."
      isUsual={isUsual}
    />
  </>
);
