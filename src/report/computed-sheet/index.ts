export { type PrintedFile, printAskedSheet } from "./print-asked-sheet.ts";
export type { SheetStamp } from "./sheet-stamp.ts";
