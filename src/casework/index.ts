export { type HighsRuntime, highsSolver, type ProgrammeSolver } from "#engines/planning";
export { HARDNESS_RANGE } from "#engines/rubber";
export { findReadingPlace } from "#vehicle";
export * from "./bodies/index.ts";
export type * from "./bodies.ts";
export { alongForm, type CornerRow, carMotionForm, carMotions, computeCar } from "./car/index.ts";
export type * from "./car.ts";
export type { CaseStore, LookOutcome, PhotoStore, SaveOutcome as DocumentSaveOutcome } from "./case-ports.ts";
export { type LargestPhotoBytes, largestPhotoBytes } from "./case-ports.ts";
export { type AppraisalMemory, createMemory } from "./cases/appraisal-memory.ts";
export {
  type Appraisal,
  type AppraisedFinding,
  appraiseVisit,
} from "./cases/appraise.ts";
export type { AsLeft } from "./cases/as-left.ts";
export { type CarToday, computeCarToday } from "./cases/car-today.ts";
export { type Caution, cautionsFor } from "./cases/cautions.ts";
export { checkPlanVisits, oddityWords, type PlanOddity, planFromNow } from "./cases/check-plan-visits.ts";
export type { CoveredRemedy } from "./cases/covered-remedies.ts";
export type * from "./cases/documents.ts";
export { formatKm } from "./cases/format-km.ts";
export { foundAt } from "./cases/found-at.ts";
export type { Gate } from "./cases/hand-over.ts";
export type { JobCard, JobStep } from "./cases/job-card.ts";
export { CONFIDENCE, judgeLooks } from "./cases/judge-looks.ts";
export { reasonHead, reasonOutcome } from "./cases/judgement-words.ts";
export { limitsAt, type PlaceLimit } from "./cases/limits-at.ts";
export { loadStateSays } from "./cases/load-state-words.ts";
export type * from "./cases/look.ts";
export { looksBefore } from "./cases/looks-before.ts";
export type { PlaceFinding, Reason, ReasonSubject } from "./cases/place-finding.ts";
export { type CountedReading, countingLooks, groupByPlace, type PlaceLooks } from "./cases/place-looks.ts";
export type { PlannedRemedy, VisitPlan } from "./cases/plan-visits.ts";
export {
  effectWords,
  formatChance,
  formatMoney,
  lifeWords,
  movedWithWords,
  nextWorkWords,
  partsWords,
  planStatusWords,
  visitName,
  waitingCost,
  waitingWords,
} from "./cases/plan-words.ts";
export { type PriceLine, remedyPriceLines, visitPriceLines } from "./cases/price-lines.ts";
export type { PlannedVisit, SharedWork } from "./cases/price-visit.ts";
export { quantitiesFor } from "./cases/quantities-for.ts";
export { computeReadingUncertainty, instrumentsFor, usualInstrument } from "./cases/reading-instruments.ts";
export { formatReading } from "./cases/reading-reasons.ts";
export { NOBODY, recordedBy } from "./cases/recorded-by.ts";
export { type RemainingLife, riskOver } from "./cases/remaining-life.ts";
export type { CarRemedy } from "./cases/remedies.ts";
export type { ReteachItem } from "./cases/reteach.ts";
export { ratesOf, type ShopRates } from "./cases/shop-rates.ts";
export { gradeOfPlay, gradeOfSign, SIGNS_OF_TORN, signsFor, signWords, tornGrade } from "./cases/signs.ts";
export { type SplitLooks, splitByWork } from "./cases/split-by-work.ts";
export { computeStageMarks, type StageMark, stageOrder, stageWords, type VisitProgress } from "./cases/stages.ts";
export {
  groupWords as readingGroupWords,
  type QuantityForm,
  quantityForms,
  type ReadingGroup,
  type StandardReading,
  standardReadings,
} from "./cases/standard-readings.ts";
export { fastenerWords, torqueWords } from "./cases/torque-words.ts";
export { twinPlace } from "./cases/twin-place.ts";
export { usualPlan, withUsualVisits } from "./cases/usual-plan.ts";
export { type CarPace, paceWords, parseDay, visitDateWords } from "./cases/visit-dates.ts";
export { recordOfVisit, type VisitRecord } from "./cases/visit-record.ts";
export { doesWords, type WhatItDoes } from "./cases/what-it-does.ts";
export { hasGrade, isWorthSaying, NOT_KNOWN, notOnFileWords, saysNothing } from "./cases/worth-saying.ts";
export { type HeardRemark, hearRemarks, notTakenUpWords } from "./enquiry/hear-remarks.ts";
export { type ConditionName, orderConditions, readSaidWhen } from "./enquiry/said-when.ts";
export { findSymptoms } from "./enquiry/suggest-symptoms.ts";
export { computeFaultEffect } from "./fault/compute-fault-effect.ts";
export { checkFirmer, firmerWords, firmnessOf, firmnessWords } from "./fault/firmer-rubber.ts";
export {
  decimalsOf,
  formatBand,
  formatBandSizes,
  formatFigure,
  formatNumber,
  formatRange,
  unitSign,
} from "./fault/format-figure.ts";
export { conditionWords } from "./fault/phrases.ts";
export { isSignSure } from "./fault/settle.ts";
export type * from "./fault-effect.ts";
export {
  computeHandTest,
  computeHold,
  formatForce,
  HAND_MEANS,
  MOST_BAR,
  MOST_MOMENT,
  MOST_PUSH,
  seenInWords,
} from "./hold/index.ts";
export type * from "./hold.ts";
export { computeMatch, LEAST_HEIGHTS, takeOverMatch } from "./match/index.ts";
export type * from "./match.ts";
export { rankCoordinates } from "./points/rank-coordinates.ts";
export type * from "./points.ts";
export type * from "./ports.ts";
export { asLeftWords, shortAsLeftWords } from "./readings/as-left-words.ts";
export type { AxleAsLeft, JudgedAsLeft } from "./readings/judge-as-left.ts";
export type { Meaning } from "./readings/what-it-can-mean.ts";
export { computeShake, rememberShake } from "./shake/compute-shake.ts";
export type * from "./shake.ts";
export type * from "./sheet-question.ts";
export type { UnplannedCause } from "./suspects/accepted-causes.ts";
export type { Move } from "./suspects/answer-moves.ts";
export { type ComplaintAnswer, complaintWords } from "./suspects/complaint-answers.ts";
export type { SuspectBasis } from "./suspects/suspect-question.ts";
export { isAtPlacesOf } from "./suspects/suspect-words.ts";
export type { Symptom } from "./suspects/symptom.ts";
export { symptoms } from "./suspects/symptom-table.ts";
export {
  type CarSuspect,
  type CarSuspects,
  NO_LOOK_TELLS_MUCH,
  tellingLooks,
} from "./suspects/visit-suspects.ts";
export * from "./travel/index.ts";
export { loadIsInvented } from "./workshop-kind.ts";
