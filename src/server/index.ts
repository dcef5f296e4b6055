export { buildApp, type ServerParts } from "./app.ts";
export { serve } from "./main.ts";
export { type RunningServer, startServer } from "./start-server.ts";
