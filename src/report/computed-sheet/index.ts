export { type PrintedFile, printAskedSheet, type SheetStamp } from "./print-asked-sheet.ts";
