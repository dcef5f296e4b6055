import { demandNode } from "./node-version.mjs";

demandNode();
const { spawnSync } = await import("node:child_process");
const { mkdirSync, readFileSync, rmSync } = await import("node:fs");
const { availableParallelism } = await import("node:os");
const { join } = await import("node:path");
const { buildWhatIsStale } = await import("./build.mjs");
const { repository } = await import("./changed.mjs");
const { installPackages } = await import("./packages.mjs");

installPackages();

let passed = 0;
let failed = 0;
const broken = [];

const head = (title) => console.log(`\n=== ${title}`);

const count = (title, good, bad) => {
  passed += good;
  failed += bad;
  if (bad > 0) broken.push(title);
};

const runNode = (script, args) =>
  spawnSync(process.execPath, [join(repository, "node_modules", script), ...args], {
    cwd: repository,
    stdio: "inherit",
  }).status === 0;

/** One gate: counts as one test, kept or broken. */
const check = (title, run) => {
  head(title);
  const kept = run();
  count(title, kept ? 1 : 0, kept ? 0 : 1);
};

/** What a run of Vitest came to: tests left out count as failed, and so does a file or a run that broke by itself. */
const countResults = (report, ended) => {
  let results;
  try {
    results = JSON.parse(readFileSync(report, "utf8"));
  } catch {
    return { good: 0, bad: 1 };
  }
  const leftOut = results.numPendingTests + results.numTodoTests;
  const brokenFiles = results.testResults.filter(
    ({ status, assertionResults }) => status === "failed" && !assertionResults.some((test) => test.status === "failed"),
  ).length;
  const bad = results.numFailedTests + leftOut + brokenFiles;
  return { good: results.numPassedTests, bad: bad === 0 && !ended ? 1 : bad };
};

const runTests = (title, projects, workers) => {
  head(title);
  const report = join(repository, ".cache", `results-${projects[0]}.json`);
  mkdirSync(join(repository, ".cache"), { recursive: true });
  rmSync(report, { force: true });
  const ended = runNode("vitest/vitest.mjs", [
    "run",
    ...projects.flatMap((project) => ["--project", project]),
    `--maxWorkers=${workers}`,
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
  ]);
  const { good, bad } = countResults(report, ended);
  count(title, good, bad);
};

check("Biome: lint and format", () => runNode("@biomejs/biome/bin/biome", ["check", "--max-diagnostics=50"]));
for (const project of ["core", "node", "web", "tests"]) {
  check(`TypeScript: ${project}`, () => runNode("typescript/bin/tsc", ["-p", `tsconfig.${project}.json`]));
}
check("dependency-cruiser: who may import whom", () =>
  runNode("dependency-cruiser/bin/dependency-cruise.mjs", ["--config", "dependency-rules.cjs", "src"]),
);
check("Build", () => buildWhatIsStale());
runTests(
  "Tests: unit, property, reference, architecture",
  ["unit", "property", "reference", "architecture"],
  availableParallelism(),
);
runTests("Tests: records", ["records"], 1);
runTests("Tests in a browser", ["e2e"], availableParallelism());

head("Result (each check above counts as one)");
for (const title of broken) console.log(`failed: ${title}`);
process.exitCode = failed === 0 ? 0 : 1;
console.log(`${passed} passed, ${failed} failed`);
