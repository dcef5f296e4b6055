export { buildApp, type ServerParts } from "./app.ts";
export { type FamilyShelf, openFamilyShelf, type ShelvedFamily } from "./family-shelf.ts";
export { type BeginOptions, serve } from "./main.ts";
export {
  exampleFamilies,
  givenFamilies,
  isFresh,
  loadDemoWorkshop,
  openWorkshop,
  type WorkshopKind,
} from "./open-workshop.ts";
export { type RunningServer, startServer } from "./start-server.ts";
