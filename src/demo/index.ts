export * from "./demo-families.ts";
export { type DemoDocument, type DemoWorkshop, demoWorkshop } from "./workshop/demo-workshop.ts";
