import { defineConfig } from "vitest/config";

const projects = {
  // Unit, property, reference and architecture tests: one project, so that a worker reads what they share once.
  plain: {
    include: ["src/**/*.test.{ts,tsx}", "test/**/*.test.ts"],
    exclude: ["test/records/**", "test/e2e/**"],
  },
  records: { include: ["test/records/**/*.test.ts"], testTimeout: 180_000, hookTimeout: 120_000 },
  e2e: {
    include: ["test/e2e/**/*.test.ts"],
    globalSetup: ["test/browser-setup/start-for-tests.ts"],
    setupFiles: ["test/browser-setup/take-pages-back.ts"],
  },
};

export default defineConfig({
  test: {
    allowOnly: false,
    // Test files share what they import (no test changes a module): reading it anew per file took as long as the tests.
    isolate: false,
    // No test asserts a time; this only ends one that hangs, on however slow a machine.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 60_000 } },
    projects: Object.entries(projects).map(([name, test]) => ({ extends: true as const, test: { name, ...test } })),
  },
});
