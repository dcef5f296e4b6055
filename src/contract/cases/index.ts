export {
  type ArchiveLine,
  type ArchiveTally,
  formatArchiveLine,
  parseArchiveLine,
} from "./archive-file.ts";
export { type CarTodaySheet, formatCarToday } from "./car-today-form.ts";
export { checkMixing } from "./check-mixing.ts";
export { checkOdometer, type OdometerReading } from "./check-odometer.ts";
export { checkReading } from "./check-reading.ts";
export { caseCodes } from "./codes.ts";
export { formatBody, readBody } from "./document-form.ts";
export { type DocumentSheet, documentKinds, type WireBody } from "./document-schemas.ts";
export {
  checkDocumentId,
  formatStoredDocument,
  isDocumentKind,
  parseSentDocument,
  type SentDocument,
  type StoredDocumentSheet,
  settingsId,
  unknownKindFinding,
} from "./document-sheet.ts";
export { type BatchEntry, parseLookBatch } from "./look-batch.ts";
export { formatLook, formatStoredLook, type LookSheet, readLook, type StoredLookSheet } from "./look-form.ts";
export { sentLook } from "./look-schema.ts";
export { quantityNames, type ReadingUnit, readingUnits, uncertaintyKey, valueKey } from "./reading-unit.ts";
