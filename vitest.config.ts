import { defineConfig } from "vitest/config";

const projects = {
  unit: {
    include: [
      "src/**/*.test.{ts,tsx}",
      "test/command-line/**/*.test.ts",
      "test/casework/**/*.test.ts",
      "test/family-editor/**/*.test.ts",
      "test/printed/**/*.test.ts",
    ],
    exclude: ["src/**/*.prop.test.ts"],
  },
  property: { include: ["src/**/*.prop.test.ts", "test/fuzz/**/*.test.ts"] },
  reference: { include: ["test/reference/**/*.test.ts"] },
  // Its programs are killed and its disks filled: each file in a process of its own.
  records: { include: ["test/records/**/*.test.ts"], isolate: true, testTimeout: 180_000, hookTimeout: 120_000 },
  architecture: { include: ["test/architecture/**/*.test.ts"] },
  e2e: {
    include: ["test/e2e/**/*.test.ts"],
    globalSetup: ["test/browser-setup/start-for-tests.ts"],
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
