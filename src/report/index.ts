export type { FaultSheetFacts } from "./fault-sheet-facts.ts";
export { printFaultSheet } from "./print-fault-sheet.ts";
