export type { CaseStore, LookOutcome, PhotoStore, SaveOutcome as DocumentSaveOutcome } from "./case-ports.ts";
export type * from "./cases/documents.ts";
export type * from "./cases/look.ts";
export { gradeOfPlay, gradeOfSign, signsFor, signWords, tornGrade } from "./cases/signs.ts";
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
