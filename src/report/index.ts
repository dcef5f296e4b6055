export * from "./computed-sheet/index.ts";
export type { FaultSheetFacts } from "./fault-sheet-facts.ts";
export type { OwnersPageFacts, OwnersPageRates } from "./owners-page-facts.ts";
export { printFaultSheet } from "./print-fault-sheet.ts";
export { printOwnersPage } from "./print-owners-page.ts";
