import { Link, useNavigate, useSearch } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import {
  type Appraisal,
  type CarPace,
  formatNumber,
  foundAt,
  type PlanDocument,
  type PlannedRemedy,
  paceWords,
  planFromNow,
  planStatusWords,
  visitDateWords,
  withUsualVisits,
} from "#casework";
import type { Family } from "../../car.ts";
import { PrintOwnersPage } from "../appraisal/print-owners-page.tsx";
import { type AppraisedCase, useAppraisal } from "../appraisal/use-appraisal.ts";
import { WaitingPage } from "../appraisal/waiting-page.tsx";
import { formatDistance, kmPer } from "../car/distance-words.ts";
import type { DistanceUnit } from "../car/odometer.ts";
import { momentNow } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { type DistanceRule, distanceRule, nameRows } from "./distance-rule.ts";
import { agreeTo, fixTo, leaveOpen } from "./plan-changes.ts";
import { findingsOf, PlanGroup } from "./plan-rows.tsx";
import type { PlanSearch } from "./plan-search.ts";
import { PlanTotals } from "./plan-totals.tsx";
import { RemedyMargin } from "./remedy-margin.tsx";
import { RepricedNote } from "./repriced-note.tsx";
import { VisitSumMargin } from "./visit-sum-margin.tsx";
import { VisitsEditor } from "./visits-editor.tsx";

interface RuleHeadProps {
  readonly rule: DistanceRule;
  readonly visits: PlanDocument["visits"];
  readonly unit: DistanceUnit;
  readonly pace: CarPace;
  readonly changing: boolean;
  readonly onChangeVisits: () => void;
}

/** Height of the rule with one row of names, and of one row more, px. */
const RULE_HEIGHT = 104;
const NAME_ROW = 62;
/** Width of a letter of a visit's day against one of its name, which is set larger and bold. */
const DAY_LETTER = 0.85;

/** The day of a visit where there is little room: "~ May 2027" for one that is estimated. */
const shortDay = (visit: PlanDocument["visits"][number], pace: CarPace): string =>
  visitDateWords(visit, pace).replace(/^about /, "~ ");

/** The rule of distance with its figures, and the visits on it. */
const RuleHead = ({ rule, visits, unit, pace, changing, onChangeVisits }: RuleHeadProps) => {
  const rows = nameRows(
    visits.map((visit) => ({
      letters: Math.max(visit.label.length, DAY_LETTER * shortDay(visit, pace).length),
      share: rule.share(visit.odometerKm),
    })),
  );
  return (
    <div className="plan-head">
      <div className="plan-head-words">
        <button type="button" className="link" aria-pressed={changing} onClick={onChangeVisits}>
          Change the visits
        </button>
        <span className="note" aria-hidden="true">
          bar: as thick as it is likely to last; dashed: from practice, nobody has counted
        </span>
      </div>
      <div className="plan-rule" aria-hidden="true" style={{ height: RULE_HEIGHT + NAME_ROW * Math.max(0, ...rows) }}>
        {visits.map((visit, i) => (
          <span
            key={visit.odometerKm}
            className="plan-visit"
            style={{ left: `${100 * rule.share(visit.odometerKm)}%`, top: NAME_ROW * (rows[i] ?? 0) }}
          >
            <strong>{visit.label}</strong>
            <span className="note">{formatDistance(visit.odometerKm, unit)}</span>
            <span className="note">{shortDay(visit, pace)}</span>
          </span>
        ))}
        <span className="plan-axis">
          {rule.ticks.map((km) => (
            <span key={km} className="plan-tick note" style={{ left: `${100 * rule.share(km)}%` }}>
              {formatNumber(km / kmPer(unit) / 1000, 0)}
            </span>
          ))}
        </span>
      </div>
      <span className="plan-head-unit note" aria-hidden="true">
        thousand {unit === "km" ? "km" : "miles"}
      </span>
    </div>
  );
};

const NothingSelected = ({ appraisal }: { readonly appraisal: Appraisal }) => (
  <>
    <h2 className="heading">{appraisal.remedies.length === 0 ? "Nothing to plan yet" : "Choose a remedy"}</h2>
    <p className="margin-lead">
      {appraisal.remedies.length === 0
        ? "Findings that ask for work bring their remedies here by themselves."
        : "The owner agrees to whole remedies, or declines them; what is left is priced again at once."}
    </p>
    {appraisal.uncured.length === 0 ? null : (
      <p className="margin-notice">No remedy on file for {appraisal.uncured.map(foundAt).join("; ")}.</p>
    )}
  </>
);

/** Changes the plan document; the first change saves the plan as it is shown. */
const usePlanChange = ({ held }: AppraisedCase, appraisal: Appraisal) => {
  const { change, visit } = held;
  const shown = appraisal.planDocument;
  return useCallback(
    (to: (plan: PlanDocument) => PlanDocument) =>
      change("plan", (body) => to(body === null ? shown : planFromNow(body, visit.odometerKm))),
    [change, shown, visit.odometerKm],
  );
};

/** Agrees to a remedy, or takes the word back; what no visit holds yet is agreed to for now. */
const sayWord = (doc: PlanDocument, { remedy, agreed, visit }: PlannedRemedy, who: string): PlanDocument => {
  if (agreed) return leaveOpen(doc, remedy.id);
  const said = agreeTo(doc, remedy.id, who, momentNow());
  return visit === null ? fixTo(said, remedy.id, 0) : said;
};

/** True where the visits stand elsewhere than they were saved, because the odometer of the car is another now. */
const hasMovedAlong = (saved: PlanDocument | null, shown: PlanDocument): boolean =>
  saved?.visits[1] !== undefined && saved.visits[1].odometerKm !== shown.visits[1]?.odometerKm;

const PLAN = "/cases/$visit/plan";

const PlanSheet = ({ of, appraisal, family }: { of: AppraisedCase; appraisal: Appraisal; family: Family }) => {
  const { remedy: selected = null, price = false, sum = null, visits: changing = false } = useSearch({ from: PLAN });
  const navigate = useNavigate({ from: PLAN });
  const onChange = usePlanChange(of, appraisal);
  const { plan, planDocument } = appraisal;
  const { rates } = of.record;
  const { who, settings, car, visit } = of.held;
  const unit = car.distanceUnit;
  const pace = { visit, year: car.year };
  const isUsual = of.record.work.origin === "usual";
  const rule = useMemo(() => distanceRule(planDocument, kmPer(unit)), [planDocument, unit]);
  const show = (search: PlanSearch) => void navigate({ search, replace: true });
  const summed = sum === null ? null : (plan.visits[sum] ?? null);
  const chosen = plan.remedies.find((r) => r.remedy.id === selected) ?? null;
  const rows = {
    rule,
    visits: plan.visits,
    findings: appraisal.findings,
    currency: rates.currency,
    selected,
    onSelect: (remedy: string) => show({ remedy }),
    onPrice: (remedy: string) => show({ remedy, price: true }),
    onAgree: (planned: PlannedRemedy) => onChange((doc) => sayWord(doc, planned, who)),
  };
  return (
    <CaseSheet
      stage="plan"
      title={`Plan over ${plan.visits.length} visits`}
      waiting={of.waiting}
      marks={appraisal.stages}
      subject={changing ? "visits" : summed === null ? selected : `sum ${sum}`}
      margin={
        <>
          {changing ? (
            <VisitsEditor
              plan={of.held.plan === null ? planDocument : planFromNow(of.held.plan, visit.odometerKm)}
              onChange={onChange}
              onClose={() => show({})}
            />
          ) : summed !== null ? (
            <VisitSumMargin visit={summed} plan={plan} rates={rates} isUsual={isUsual} />
          ) : chosen === null ? (
            <NothingSelected appraisal={appraisal} />
          ) : (
            <RemedyMargin
              family={family}
              planned={chosen}
              plan={plan}
              rates={rates}
              cured={findingsOf(chosen, appraisal.findings)}
              isUsual={isUsual}
              priceOpen={price}
              onPriceOpen={(open) =>
                show(open ? { remedy: chosen.remedy.id, price: true } : { remedy: chosen.remedy.id })
              }
              onAgree={() => rows.onAgree(chosen)}
              onChange={onChange}
            />
          )}
          <StageDone stage="plan" />
          {appraisal.remedies.length === 0 ? null : <PrintOwnersPage visitId={of.held.visitId} />}
        </>
      }
    >
      <div className="plan-page">
        <RuleHead
          rule={rule}
          visits={planDocument.visits}
          unit={unit}
          pace={pace}
          changing={changing}
          onChangeVisits={() => show(changing ? {} : { visits: true })}
        />
        {planDocument.visits.length > 0 ? null : (
          <p className="margin-notice">
            No visits are set, so nothing is planned.{" "}
            <button
              type="button"
              className="link"
              onClick={() => onChange((doc) => withUsualVisits(doc, visit.odometerKm))}
            >
              Take the usual ones: now and the next two services
            </button>
          </p>
        )}
        {appraisal.covered.length === 0 ? null : (
          <p className="label">Left out: {appraisal.covered.map(({ label, why }) => `${label}: ${why}`).join(" ")}</p>
        )}
        {appraisal.unplanned.map(({ cause, label, why }) => (
          <p key={cause} className="margin-notice">
            Accepted as the cause, and not planned: <strong>{label}</strong>: {why}.{" "}
            <Link to="/cases/$visit/findings" params={{ visit: of.held.visitId }} search={{ suspect: cause }}>
              Findings
            </Link>
          </p>
        ))}
        <RepricedNote appraisal={appraisal} currency={rates.currency} />
        <div className="plan-body">
          <div className="plan-lines" aria-hidden="true">
            {planDocument.visits.map((visit) => (
              <span key={visit.odometerKm} style={{ left: `${100 * rule.share(visit.odometerKm)}%` }} />
            ))}
          </div>
          {plan.visits.map((visit, i) => (
            <PlanGroup
              key={visit.odometerKm}
              head={visit.label}
              visit={visit}
              remedies={plan.remedies.filter((r) => r.visit === i)}
              {...rows}
            />
          ))}
          <PlanGroup
            head="Not within this plan"
            visit={null}
            remedies={plan.remedies.filter((r) => r.visit === null && !r.declined)}
            {...rows}
          />
          <PlanGroup
            head="Declined by the owner"
            visit={null}
            remedies={plan.remedies.filter((r) => r.declined)}
            {...rows}
          />
        </div>
        <PlanTotals
          plan={plan}
          currency={rates.currency}
          labourCentsPerHour={rates.labourCentsPerHour}
          taxShare={rates.taxShare}
          opened={sum}
          onOpen={(index) => show(index === sum ? {} : { sum: index })}
        />
        <p className="label">{planStatusWords(plan, rates.currency)}</p>
        {hasMovedAlong(of.held.plan, planDocument) ? (
          <p className="label">
            The car's odometer was changed since this plan was saved; its visits have moved along with it.
          </p>
        ) : null}
        <p className="note">
          {paceWords(pace)}{" "}
          {isUsual ? "Hours, torques and prices are the usual for these layouts, not this family's own. " : ""}
          {settings === null ? "Rates are start values, invented: the workshop has not set its own." : ""}
        </p>
      </div>
    </CaseSheet>
  );
};

/** Plan: now or later, over visits along a rule of distance, each remedy with its price and what waiting costs. */
export const PlanPage = () => {
  const of = useAppraisal();
  const family = of.held.family?.family ?? null;
  if (of.appraisal === null || family === null) return <WaitingPage stage="plan" of={of} />;
  return <PlanSheet of={of} appraisal={of.appraisal} family={family} />;
};
