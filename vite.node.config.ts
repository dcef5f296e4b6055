import { defineConfig } from "vite";

/**
 * Command line and server as two files of plain JavaScript in dist/node: a cold start reads them instead of
 * translating hundreds of sources. Packages that read files of their own stay outside.
 */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: true,
    outDir: "dist/node",
    emptyOutDir: true,
    target: "node20",
    chunkSizeWarningLimit: 4000,
    rolldownOptions: { input: { "command-line": "src/cli/index.ts", server: "src/server/index.ts" } },
  },
  ssr: { noExternal: true, external: ["highs", "better-sqlite3", "fastify", "@fastify/static", "pdfkit"] },
});
