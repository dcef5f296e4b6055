export * from "./sheet-question.ts";
