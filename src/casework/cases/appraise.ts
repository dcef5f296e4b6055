import type { ProgrammeSolver } from "#engines/planning";
import { positionsOf } from "#vehicle";
import { type AxleAsLeft, type JudgedAsLeft, judgeAsLeft } from "../readings/judge-as-left.ts";
import { judgeReadings } from "../readings/judge-readings.ts";
import { meaningOf, type ReadingMeaning } from "../readings/what-it-can-mean.ts";
import { assumeAccepted, type UnplannedCause } from "../suspects/accepted-causes.ts";
import { answerComplaints, type ComplaintAnswer } from "../suspects/complaint-answers.ts";
import { acceptedRemedies } from "../suspects/suspect-words.ts";
import type { CarSuspects } from "../suspects/visit-suspects.ts";
import { type AppraisalMemory, createMemory } from "./appraisal-memory.ts";
import { looksAsFound } from "./as-found.ts";
import { findAsLeft, isAfterWork, lastWorkAt } from "./as-left.ts";
import { planFromNow } from "./check-plan-visits.ts";
import type { CoveredRemedy } from "./covered-remedies.ts";
import type { PlanDocument } from "./documents.ts";
import { gradeFeltFluidLoss } from "./felt-fluid-loss.ts";
import { deriveGates, type Gate } from "./hand-over.ts";
import { deriveJobCard, type JobCard } from "./job-card.ts";
import { CONFIDENCE, judgePositions } from "./judge-looks.ts";
import type { PlaceFinding } from "./place-finding.ts";
import { countingLooks } from "./place-looks.ts";
import { emptyPlan, planVisits, type VisitPlan } from "./plan-visits.ts";
import { type CarRemedy, deriveRemedies } from "./remedies.ts";
import { deriveReteach, type ReteachItem } from "./reteach.ts";
import { computeStageMarks, type StageMark } from "./stages.ts";
import { withStampedMinimum } from "./stamped-minimum.ts";
import { usualPlan } from "./usual-plan.ts";
import type { VisitRecord } from "./visit-record.ts";
import { findWhatItDoes, NOTHING_DONE, type WhatItDoes } from "./what-it-does.ts";

export type { VisitRecord } from "./visit-record.ts";

/** A finding with what the fault does, where the linkage can compute it. */
export interface AppraisedFinding extends PlaceFinding, ReadingMeaning, WhatItDoes {}

export interface Appraisal {
  readonly findings: readonly AppraisedFinding[];
  /** Places of the drawing nobody has looked at. */
  readonly notLookedAt: number;
  readonly remedies: readonly CarRemedy[];
  /** Findings no remedy on file cures. */
  readonly uncured: readonly PlaceFinding[];
  /** Remedies left out because another one does their work too. */
  readonly covered: readonly CoveredRemedy[];
  /** Causes somebody accepted that bring no work into the plan, and why. */
  readonly unplanned: readonly UnplannedCause[];
  readonly plan: VisitPlan;
  readonly planDocument: PlanDocument;
  readonly suspects: CarSuspects;
  /** What came of each complaint of the owner. */
  readonly complaints: readonly ComplaintAnswer[];
  readonly jobCard: JobCard;
  readonly asLeft: readonly JudgedAsLeft[];
  readonly axlesAsLeft: readonly AxleAsLeft[];
  readonly reteach: readonly ReteachItem[];
  readonly gates: readonly Gate[];
  readonly stages: readonly StageMark[];
}

/**
 * Findings, suspects, remedies, plan, job card, hand-over and job line of one visit, from its records alone. Pages,
 * command line and paper all show this one answer; the solver ends by itself after a few seconds.
 * @param memory answers of an earlier appraisal of the same car, so that only what changed is computed again
 */
export function appraiseVisit(
  record: VisitRecord,
  solver: ProgrammeSolver,
  memory: AppraisalMemory = createMemory(),
): Appraisal {
  const { family } = record;
  const work = withStampedMinimum(record.work, record.visit);
  const positions = family ? positionsOf(family) : [];
  const complaints = record.enquiry?.symptoms ?? [];
  const judge = (looks: VisitRecord["looks"]) =>
    gradeFeltFluidLoss(judgePositions(positions, looks, record.past, work), complaints);
  const asLeft = findAsLeft(record.looks, record.jobCard, record.plan);
  const asFound = looksAsFound(record.looks, record.jobCard, asLeft, judge);
  const judged = [
    ...judge(asFound),
    ...(family
      ? judgeReadings({
          ...record,
          work,
          family,
          looks: asFound,
          settled: record.visit.settled,
          confidence: CONFIDENCE,
        })
      : []),
  ];
  const findings = judged.map((finding, i): AppraisedFinding => {
    const position = positions[i];
    return {
      ...finding,
      ...meaningOf(finding, judged),
      ...(family && position ? findWhatItDoes(family, position, finding, complaints, memory) : NOTHING_DONE),
    };
  });
  findings.sort((a, b) => rankOf(b) - rankOf(a));
  const { odometerKm } = record.visit;
  const planDocument = record.plan === null ? usualPlan(odometerKm ?? 0) : planFromNow(record.plan, odometerKm);
  const suspects = memory.suspects(complaints, findings, record.enquiry?.suspects ?? []);
  const { assumed, unplanned } = assumeAccepted(suspects.suspects, findings, work);
  const { remedies, uncured, covered } = deriveRemedies(work, [...findings, ...assumed], planDocument);
  const accepted = acceptedRemedies(suspects.suspects, remedies);
  const plan = family
    ? planVisits(family, work.limits, remedies, planDocument, record.rates, memory.solver(solver), accepted)
    : emptyPlan();
  const agreedNow = plan.remedies
    .filter((r) => r.visit === 0 && planDocument.agreed.some((a) => a.remedy === r.remedy.id))
    .map((r) => r.remedy);
  const jobCard = deriveJobCard(agreedNow, record.jobCard);
  const reteach = deriveReteach(agreedNow, record.handOver);
  const lastWork = lastWorkAt(record.jobCard);
  const left = judgeAsLeft({ ...record, work, left: asLeft, settled: record.visit.settled, confidence: CONFIDENCE });
  const gates = deriveGates({
    jobCard,
    remedies: agreedNow,
    findings,
    reteach,
    undecided: plan.remedies.filter((r) => r.visit === 0 && !r.agreed && !r.declined).map((r) => r.remedy),
    uncured,
    readAfterWork: countingLooks(record.looks).filter((l) => isAfterWork(l, lastWork)),
    left,
    document: record.handOver,
  });
  const seen = findings.filter((f) => f.grade !== null);
  const stages = computeStageMarks({
    visit: record.visit,
    hasWords: (record.enquiry?.words ?? "") !== "",
    hasFamily: family !== null,
    readings: record.looks.filter(
      ({ content: c }) => c.kind === "reading" || (c.kind === "not-taken" && c.quantity !== null),
    ).length,
    looks: record.looks.length,
    places: positions.length,
    findings: seen.filter((f) => (f.grade ?? 0) > 0).length,
    agreed: planDocument.agreed.length,
    stepsDone: jobCard.done,
    steps: jobCard.steps.length,
    gatesOpen: gates.filter((g) => g.state === "open").length,
  });
  return {
    findings,
    notLookedAt: findings.filter((f) => f.grade === null && !f.notKnown).length,
    remedies,
    uncured,
    covered,
    unplanned,
    plan,
    planDocument,
    suspects,
    complaints: answerComplaints(record.enquiry?.symptoms ?? [], findings, record.enquiry?.suspects ?? []),
    jobCard,
    asLeft: left.readings,
    axlesAsLeft: left.axles,
    reteach,
    gates,
    stages,
  };
}

/** Order of the findings: worst first, then what was read and is not known, then what nobody looked at. */
const rankOf = ({ grade, notKnown }: PlaceFinding): number => grade ?? (notKnown ? -1 : -2);
