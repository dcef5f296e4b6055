import {
  type AppraisedFinding,
  doesWords,
  formatMoney,
  formatNumber,
  lifeWords,
  type PlanDocument,
  type PlannedRemedy,
  remedyPriceLines,
  type ShopRates,
  type VisitPlan,
  waitingWords,
} from "#casework";
import { positionName } from "#drawing";
import type { Family } from "../../car.ts";
import { MarginSection } from "../../shell/margin-section.tsx";
import { GradeLine } from "../appraisal/grade-words.tsx";
import { ChoiceCosts } from "./choice-costs.tsx";
import { decline, fixTo, leaveOpen } from "./plan-changes.ts";
import { PriceTable } from "./price-lines.tsx";

interface RemedyMarginProps {
  readonly family: Family;
  readonly planned: PlannedRemedy;
  readonly plan: VisitPlan;
  readonly rates: ShopRates;
  /** Findings it cures. */
  readonly cured: readonly AppraisedFinding[];
  /** True where hours are the usual ones of the layout and no price is on file. */
  readonly isUsual: boolean;
  readonly priceOpen: boolean;
  readonly onPriceOpen: (open: boolean) => void;
  readonly onAgree: () => void;
  readonly onChange: (change: (plan: PlanDocument) => PlanDocument) => void;
}

/** The price of a remedy; it opens to every part and piece of work in it. */
const Price = ({ planned, plan, rates, isUsual, priceOpen, onPriceOpen }: RemedyMarginProps) => {
  const { price, priceComplete } = planned;
  const { currency, taxShare } = rates;
  if (price === null) return null;
  return (
    <details
      className="opens price-opens"
      open={priceOpen}
      onToggle={(event) => {
        if (event.currentTarget.open !== priceOpen) onPriceOpen(event.currentTarget.open);
      }}
    >
      <summary>
        <span className="figure-large">{formatMoney(price.total, currency)}</span>
        <span className="label">
          without tax{priceComplete ? "" : ", parts not on file"};{" "}
          {formatMoney(Math.round(price.total * (1 + taxShare)), currency)} with
        </span>
        <span className="price-opens-word">What it is made of</span>
      </summary>
      <PriceTable
        lines={remedyPriceLines(planned, plan, rates)}
        rates={rates}
        total={price.total}
        whole={false}
        relation="Own parts and labour, and of what several remedies need a share in proportion to own labour; the prices of a visit add up to it."
        isUsual={isUsual}
      />
    </details>
  );
};

/** Explains one remedy: what it cures, what it costs, what waiting costs, and the owner's word on it. */
export const RemedyMargin = (props: RemedyMarginProps) => {
  const { family, planned, plan, rates, cured, onAgree, onChange } = props;
  const { remedy, price } = planned;
  const { currency } = rates;
  const waits = waitingWords(planned, plan, currency);
  return (
    <>
      <div className="margin-top">
        <GradeLine grade={remedy.grade} close={remedy.closeToCall} />
      </div>
      <h2 className="heading">{remedy.label}</h2>
      {price === null ? (
        <p className="margin-lead">
          {planned.declined
            ? "Declined by the owner."
            : planned.broughtBy === null
              ? "Not within this plan."
              : `Done with ${planned.broughtBy.name}, and in that price.`}
        </p>
      ) : (
        <Price {...props} />
      )}
      <p className="margin-links plan-word">
        <button type="button" className="link" onClick={onAgree}>
          {planned.agreed ? "Take back the word" : "The owner agrees"}
        </button>
        <button
          type="button"
          className="link"
          onClick={() => onChange((doc) => (planned.declined ? leaveOpen(doc, remedy.id) : decline(doc, remedy.id)))}
        >
          {planned.declined ? "Take it in again" : "The owner declines"}
        </button>
        {planned.fixed ? (
          <button type="button" className="link" onClick={() => onChange((doc) => fixTo(doc, remedy.id, null))}>
            Leave the visit to the plan
          </button>
        ) : null}
      </p>
      {cured.map((finding) => (
        <MarginSection key={finding.place} title={positionName(family, finding.place)}>
          {finding.found}
          {finding.limitWords === null ? "" : `; ${finding.limitWords}`}.{" "}
          <span className="plan-effect">{doesWords(finding)}</span>
        </MarginSection>
      ))}
      {planned.declined ? null : (
        <ChoiceCosts
          planned={planned}
          plan={plan}
          currency={currency}
          onFix={(visit) => onChange((doc) => fixTo(doc, remedy.id, visit))}
        />
      )}
      {waits === "" ? null : <MarginSection title="What waiting costs">{waits}</MarginSection>}
      <MarginSection title="How long it lasts">{lifeWords(planned)}</MarginSection>
      <MarginSection title="Why here">{planned.why}</MarginSection>
      <MarginSection title="What is done">
        {remedy.operations.length === 0
          ? "No operation on file."
          : remedy.operations
              .map(
                (o) =>
                  `${o.operation.label}, ${o.corner?.replace("-", " ") ?? "once"}, ${formatNumber(o.operation.hours, 1)} h`,
              )
              .join("; ")}
      </MarginSection>
    </>
  );
};
