export * from "./demo-families.ts";
