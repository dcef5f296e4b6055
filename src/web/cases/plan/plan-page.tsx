import { useNavigate, useSearch } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import {
  type Appraisal,
  formatKm,
  formatNumber,
  type PlanDocument,
  type PlannedRemedy,
  planStatusWords,
} from "#casework";
import type { Family } from "../../car.ts";
import { PrintOwnersPage } from "../appraisal/print-owners-page.tsx";
import { type AppraisedCase, useAppraisal } from "../appraisal/use-appraisal.ts";
import { WaitingPage } from "../appraisal/waiting-page.tsx";
import { momentNow } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { type DistanceRule, distanceRule } from "./distance-rule.ts";
import { agreeTo, fixTo, leaveOpen } from "./plan-changes.ts";
import { findingsOf, PlanGroup } from "./plan-rows.tsx";
import { PlanTotals } from "./plan-totals.tsx";
import { RemedyMargin } from "./remedy-margin.tsx";

/** The rule of distance with its figures, and the visits on it. */
const RuleHead = ({ rule, visits }: { readonly rule: DistanceRule; readonly visits: PlanDocument["visits"] }) => (
  <div className="plan-head" aria-hidden="true">
    <span className="plan-head-words note">
      bar: as thick as it is likely to last; dashed: from practice, nobody has counted
    </span>
    <div className="plan-rule">
      {visits.map((visit) => (
        <span key={visit.label} className="plan-visit" style={{ left: `${100 * rule.share(visit.odometerKm)}%` }}>
          <strong>{visit.label}</strong>
          <span className="note">{formatKm(visit.odometerKm)}</span>
        </span>
      ))}
      <span className="plan-axis">
        {rule.ticks.map((km) => (
          <span key={km} className="plan-tick note" style={{ left: `${100 * rule.share(km)}%` }}>
            {formatNumber(km / 1000, 0)}
          </span>
        ))}
      </span>
    </div>
    <span className="plan-head-unit note">thousand km</span>
  </div>
);

const NothingSelected = ({ appraisal }: { readonly appraisal: Appraisal }) => (
  <>
    <h2 className="heading">{appraisal.remedies.length === 0 ? "Nothing to plan yet" : "Choose a remedy"}</h2>
    <p className="margin-lead">
      {appraisal.remedies.length === 0
        ? "Findings that ask for work bring their remedies here by themselves."
        : "The owner agrees to whole remedies, or declines them; what is left is priced again at once."}
    </p>
    {appraisal.uncured.length === 0 ? null : (
      <p className="margin-notice">
        No remedy on file for {appraisal.uncured.map((f) => f.label.toLowerCase()).join("; ")}.
      </p>
    )}
  </>
);

/** Changes the plan document; the first change saves the plan as it is shown. */
const usePlanChange = ({ held }: AppraisedCase, appraisal: Appraisal) => {
  const { change } = held;
  const shown = appraisal.planDocument;
  return useCallback(
    (to: (plan: PlanDocument) => PlanDocument) => change("plan", (body) => to(body ?? shown)),
    [change, shown],
  );
};

/** Agrees to a remedy, or takes the word back; what no visit holds yet is agreed to for now. */
const sayWord = (doc: PlanDocument, { remedy, agreed, visit }: PlannedRemedy, who: string): PlanDocument => {
  if (agreed) return leaveOpen(doc, remedy.id);
  const said = agreeTo(doc, remedy.id, who, momentNow());
  return visit === null ? fixTo(said, remedy.id, 0) : said;
};

const PlanSheet = ({ of, appraisal, family }: { of: AppraisedCase; appraisal: Appraisal; family: Family }) => {
  const { remedy: selected = null } = useSearch({ from: "/cases/$visit/plan" });
  const navigate = useNavigate({ from: "/cases/$visit/plan" });
  const onChange = usePlanChange(of, appraisal);
  const { plan, planDocument } = appraisal;
  const { rates } = of.record;
  const { who, settings } = of.held;
  const rule = useMemo(() => distanceRule(planDocument), [planDocument]);
  const chosen = plan.remedies.find((r) => r.remedy.id === selected) ?? null;
  const rows = {
    rule,
    visits: plan.visits,
    findings: appraisal.findings,
    currency: rates.currency,
    selected,
    onSelect: (remedy: string) => void navigate({ search: { remedy }, replace: true }),
    onAgree: (planned: PlannedRemedy) => onChange((doc) => sayWord(doc, planned, who)),
  };
  return (
    <CaseSheet
      stage="plan"
      title={`Plan over ${plan.visits.length} visits`}
      waiting={of.waiting}
      marks={appraisal.stages}
      subject={selected}
      margin={
        <>
          {chosen === null ? (
            <NothingSelected appraisal={appraisal} />
          ) : (
            <RemedyMargin
              family={family}
              planned={chosen}
              plan={plan}
              rates={rates}
              cured={findingsOf(chosen, appraisal.findings)}
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
        <RuleHead rule={rule} visits={planDocument.visits} />
        <div className="plan-body">
          <div className="plan-lines" aria-hidden="true">
            {planDocument.visits.map((visit) => (
              <span key={visit.label} style={{ left: `${100 * rule.share(visit.odometerKm)}%` }} />
            ))}
          </div>
          {plan.visits.map((visit, i) => (
            <PlanGroup
              key={visit.label}
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
        />
        <p className="label">{planStatusWords(plan, rates.currency)}</p>
        <p className="note">
          {of.record.work.origin === "usual"
            ? "Hours, torques and prices are the usual for these layouts, not this family's own. "
            : ""}
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
