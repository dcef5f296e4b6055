export { formatChange } from "./change-words.ts";
export { computeTravelSheet } from "./compute-travel-sheet.ts";
export { travelFigureForms } from "./figure-forms.ts";
export { turnOfRackLeft } from "./rack-direction.ts";
export { changesShown, isNothing } from "./row-words.ts";
export { formatEffectCsv, formatTravelCsv } from "./travel-csv.ts";
export type * from "./travel-sheet.ts";
