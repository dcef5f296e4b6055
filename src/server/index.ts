export { buildApp, type ServerParts } from "./app.ts";
export { type FamilyShelf, openFamilyShelf, type ShelvedFamily } from "./family-shelf.ts";
export { serve } from "./main.ts";
export { type RunningServer, startServer } from "./start-server.ts";
