import {
  type AppraisedFinding,
  effectWords,
  formatMoney,
  formatNumber,
  type PlannedRemedy,
  type PlannedVisit,
} from "#casework";
import { GradeMark } from "../../scene/grade-mark.tsx";
import type { DistanceRule } from "./distance-rule.ts";
import { LifeBar } from "./life-bar.tsx";

export interface PlanRowsProps {
  readonly rule: DistanceRule;
  readonly visits: readonly PlannedVisit[];
  readonly findings: readonly AppraisedFinding[];
  readonly currency: string;
  readonly selected: string | null;
  readonly onSelect: (remedy: string) => void;
  /** Opens what the price of a remedy is made of. */
  readonly onPrice: (remedy: string) => void;
  readonly onAgree: (planned: PlannedRemedy) => void;
}

/** The findings a remedy cures, with what they do. */
export const findingsOf = (
  planned: PlannedRemedy,
  findings: readonly AppraisedFinding[],
): readonly AppraisedFinding[] =>
  findings.filter((f) => planned.remedy.findings.some((cured) => cured.place === f.place));

const sidesWords = ({ axle, sides }: PlannedRemedy["remedy"]): string =>
  sides.length === 2 ? `${axle ?? "both axles"}, both sides` : `${axle ?? ""} ${sides.join(" ")}`.trim();

const PlanRow = ({ planned, ...of }: PlanRowsProps & { readonly planned: PlannedRemedy }) => {
  const cured = findingsOf(planned, of.findings);
  const does = effectWords(cured);
  const { remedy } = planned;
  return (
    <li className="plan-row" data-declined={planned.declined}>
      <button
        type="button"
        className="plan-pick"
        aria-pressed={remedy.id === of.selected}
        onClick={() => of.onSelect(remedy.id)}
      >
        <GradeMark grade={remedy.grade} close={remedy.closeToCall} size={20} />
        <span className="found-what">
          <span className="found-name">{remedy.label}</span>
          <span className="note">{sidesWords(remedy)}</span>
          {planned.accepted === null ? null : <span className="note plan-does">cures the accepted cause</span>}
          {does === "" ? null : <span className="note plan-does">{does}</span>}
        </span>
        <LifeBar planned={planned} rule={of.rule} visits={of.visits.map((v) => v.odometerKm)} />
      </button>
      <span className="plan-price">
        {planned.price === null ? (
          <span className="note">
            {planned.declined
              ? "declined"
              : planned.broughtBy === null
                ? "nothing now"
                : `done with ${planned.broughtBy.name}, in that price`}
          </span>
        ) : (
          <>
            <button
              type="button"
              className="plan-price-opens"
              aria-label={`What ${formatMoney(planned.price.total, of.currency)} for ${remedy.label} is made of`}
              onClick={() => of.onPrice(remedy.id)}
            >
              <span>{formatMoney(planned.price.total, of.currency)}</span>
            </button>
            {planned.priceComplete ? null : <span className="note">parts not on file</span>}
            {planned.fixed ? <span className="note">set by hand</span> : null}
          </>
        )}
      </span>
      <button
        type="button"
        className="plan-agree"
        aria-pressed={planned.agreed}
        aria-label={`${planned.agreed ? "Agreed to" : "Agree to"} ${remedy.label}, ${sidesWords(remedy)}`}
        onClick={() => of.onAgree(planned)}
      >
        {planned.agreed ? "Agreed" : "Agree"}
      </button>
    </li>
  );
};

interface PlanGroupProps extends PlanRowsProps {
  readonly head: string;
  readonly remedies: readonly PlannedRemedy[];
  /** The visit of this group; null where it is none. */
  readonly visit: PlannedVisit | null;
}

/** What is shared and counted once, the same work at several corners in one word. */
const sharedWords = ({ shared }: PlannedVisit): string => {
  const hours = shared.reduce((sum, s) => sum + s.hours, 0);
  const corners = new Map<string, number>();
  for (const { label } of shared) corners.set(label, (corners.get(label) ?? 0) + 1);
  const pieces = [...corners].map(([label, n]) => `${label.toLowerCase()}${n > 1 ? ` at ${n} places` : ""}`);
  return `${formatNumber(hours, 1)} h shared, counted once: ${pieces.join(", ")}`;
};

/** The remedies of one visit, or of none, with the work they share. */
export const PlanGroup = ({ head, remedies, visit, ...rows }: PlanGroupProps) =>
  remedies.length === 0 ? null : (
    <section className="plan-group" aria-label={head}>
      <p className="plan-group-head">
        <span>{head}</span>
        <span className="note">{visit === null || visit.shared.length === 0 ? "" : sharedWords(visit)}</span>
      </p>
      <ol>
        {remedies.map((planned) => (
          <PlanRow key={planned.remedy.id} planned={planned} {...rows} />
        ))}
      </ol>
    </section>
  );
