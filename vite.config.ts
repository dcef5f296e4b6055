import { readFileSync } from "node:fs";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

/** The register of sources, which the Reference sheet shows. */
const sources = readFileSync(new URL("docs/sources.md", import.meta.url), "utf8");

/** The invented suspension of several bodies that can be looked at without a file of one's own. */
const exampleLayout = readFileSync(
  new URL("docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url),
  "utf8",
);

/** The pages, built into dist/web; `npm start` and the browser tests serve that folder. */
export default defineConfig({
  root: "src/web",
  plugins: [react()],
  define: { SOURCES_TEXT: JSON.stringify(sources), EXAMPLE_LAYOUT_TEXT: JSON.stringify(exampleLayout) },
  worker: { format: "es" },
  build: { outDir: "../../dist/web", emptyOutDir: true, target: "es2022" },
  server: { proxy: { "/api": "http://127.0.0.1:4870" } },
});
