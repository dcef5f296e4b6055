export type { CaseStore, LookOutcome, PhotoStore, SaveOutcome as DocumentSaveOutcome } from "./case-ports.ts";
export type * from "./cases/documents.ts";
export type * from "./cases/look.ts";
export { type CountedReading, countingLooks, groupByPlace, type PlaceLooks } from "./cases/place-looks.ts";
export { computeReadingUncertainty, instrumentsFor, usualInstrument } from "./cases/reading-instruments.ts";
export { gradeOfPlay, gradeOfSign, signsFor, signWords, tornGrade } from "./cases/signs.ts";
export { computeStageMarks, type StageMark, stageOrder, stageWords, type VisitProgress } from "./cases/stages.ts";
export {
  groupWords as readingGroupWords,
  type QuantityForm,
  quantityForms,
  type ReadingGroup,
  type StandardReading,
  standardReadings,
} from "./cases/standard-readings.ts";
export { computeFaultEffect } from "./fault/compute-fault-effect.ts";
export {
  decimalsOf,
  formatFigure,
  formatNumber,
  formatPlusMinus,
  formatRange,
  unitSign,
} from "./fault/format-figure.ts";
export { conditionWords } from "./fault/phrases.ts";
export type * from "./fault-effect.ts";
export type * from "./ports.ts";
export type { Symptom } from "./suspects/symptom.ts";
export { symptoms } from "./suspects/symptom-table.ts";
