export { checkLayout } from "./check-layout.ts";
export { findUnused } from "./find-unused.ts";
export { type LayoutSheet, layoutJsonSchema, layoutSheet } from "./layout-schema.ts";
export { readLayout } from "./read-layout.ts";
