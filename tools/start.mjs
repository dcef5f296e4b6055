import { demandNode } from "./node-version.mjs";

demandNode();
const { installPackages } = await import("./packages.mjs");
const { buildWhatIsStale } = await import("./build.mjs");
const { repository } = await import("./changed.mjs");

installPackages();
if (!buildWhatIsStale("error")) {
  console.error("The program could not be built; the lines above say where.");
  process.exit(1);
}
const { serve } = await import("../dist/node/server.js");
await serve(repository, { empty: process.argv.includes("--empty") });
