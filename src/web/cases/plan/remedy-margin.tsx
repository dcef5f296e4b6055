import {
  type AppraisedFinding,
  formatMoney,
  formatNumber,
  lifeWords,
  type PlanDocument,
  type PlannedRemedy,
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

interface RemedyMarginProps {
  readonly family: Family;
  readonly planned: PlannedRemedy;
  readonly plan: VisitPlan;
  readonly rates: ShopRates;
  /** Findings it cures. */
  readonly cured: readonly AppraisedFinding[];
  readonly onAgree: () => void;
  readonly onChange: (change: (plan: PlanDocument) => PlanDocument) => void;
}

/** What a price is made of; each shared piece with how many share it. */
const PriceFacts = ({ planned, currency }: { readonly planned: PlannedRemedy; readonly currency: string }) => {
  const { price, remedy } = planned;
  const labels = new Map(
    remedy.operations.flatMap((o) => [
      [o.id, o.operation.label] as const,
      ...o.access.map((a) => [a.id, a.label] as const),
    ]),
  );
  if (price === null) return null;
  return (
    <details className="opens">
      <summary>What the price is made of</summary>
      <table className="price-facts">
        <tbody>
          <tr>
            <th scope="row">Own labour</th>
            <td>{formatMoney(price.ownLabour, currency)}</td>
          </tr>
          {remedy.parts.map((part) => (
            <tr key={part.id}>
              <th scope="row">
                {part.count > 1 ? `${part.count} x ` : ""}
                {part.label}
              </th>
              <td>{part.priceCents === null ? "not on file" : formatMoney(part.priceCents * part.count, currency)}</td>
            </tr>
          ))}
          {price.shares.map((share) => (
            <tr key={`${share.kind}${share.id}`}>
              <th scope="row">
                {share.kind === "visit" ? "The visit itself" : (labels.get(share.id) ?? share.id)}
                {share.among.length > 1
                  ? `, shared by ${share.among.length}: ${formatMoney(share.whole, currency)} in all`
                  : ""}
              </th>
              <td>{formatMoney(share.share, currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="note">
        Relation: own parts and labour, and of what several need a share in proportion to own labour; the prices of a
        visit add up to it.
      </p>
    </details>
  );
};

/** Explains one remedy: what it cures, what it costs, what waiting costs, and the owner's word on it. */
export const RemedyMargin = ({ family, planned, plan, rates, cured, onAgree, onChange }: RemedyMarginProps) => {
  const { remedy, price } = planned;
  const { currency, taxShare } = rates;
  const waits = waitingWords(planned, plan, currency);
  return (
    <>
      <div className="margin-top">
        <GradeLine grade={remedy.grade} close={remedy.closeToCall} />
      </div>
      <h2 className="heading">{remedy.label}</h2>
      {price === null ? (
        <p className="margin-lead">{planned.declined ? "Declined by the owner." : "Not within this plan."}</p>
      ) : (
        <>
          <p className="figure-large plan-figure">{formatMoney(price.total, currency)}</p>
          <p className="label">
            without tax{planned.priceComplete ? "" : ", parts not on file"};{" "}
            {formatMoney(Math.round(price.total * (1 + taxShare)), currency)} with
          </p>
        </>
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
          <span className="plan-effect">{finding.effect?.sentence ?? ""}</span>
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
      <PriceFacts planned={planned} currency={currency} />
    </>
  );
};
