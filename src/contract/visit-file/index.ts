export { formatAppraisal } from "./appraisal-form.ts";
export { checkPlaces } from "./check-places.ts";
export { type FamilyOfVisit, parseVisitText, type VisitInFile } from "./parse-visit.ts";
export { VISIT_FORMAT, visitFile, visitJsonSchema } from "./visit-schema.ts";
