export { type HighsRuntime, highsSolver, type ProgrammeSolver } from "#engines/planning";
export type { Finding } from "#numeric";
export { batchQuestion } from "./batch-question.ts";
export * from "./cases/index.ts";
export type * from "./door.ts";
export { parseBodiesFile } from "./doors/bodies-file.ts";
export { formatComplianceQuestion } from "./doors/compliance-question.ts";
export { formatTravelQuestion } from "./doors/corner-question.ts";
export { doors, doorsWith } from "./doors/index.ts";
export { findNearest } from "./edit-distance.ts";
export * from "./family/index.ts";
export { inputTooLargeFinding, largestInputBytes, notUtf8Finding } from "./input-limits.ts";
export * from "./layout/index.ts";
export { type JsonReading, readJson } from "./read-json.ts";
export { limitFindings, type Parsed, parseReading, parseWire } from "./refusal.ts";
export type { CustomIssueParams } from "./refusal-issue.ts";
export { type JsonSchema, jsonSchemaOf } from "./refusal-schema.ts";
export {
  askDoor,
  askDoorReading,
  askDoorText,
  type DoorDescription,
  describeDoor,
  findDoor,
  unknownDoorFinding,
} from "./registry.ts";
export * from "./sheet-questions/index.ts";
export * from "./visit-file/index.ts";
