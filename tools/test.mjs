import { demandNode } from "./node-version.mjs";

demandNode();
const { spawn } = await import("node:child_process");
const { mkdirSync, readFileSync, rmSync } = await import("node:fs");
const { availableParallelism } = await import("node:os");
const { join } = await import("node:path");
const { buildWhatIsStale } = await import("./build.mjs");
const { repository } = await import("./changed.mjs");
const { installPackages } = await import("./packages.mjs");
const { typeChecker } = await import("./type-checker.mjs");

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

/** Runs a script of an installed package to its end; resolves to whether it ended well. What it says while another runs beside it is printed at its end, in one piece. */
const runNode = (script, args, { beside = false } = {}) =>
  new Promise((resolve, reject) => {
    const program = spawn(process.execPath, [join(repository, "node_modules", script), ...args], {
      cwd: repository,
      stdio: beside ? ["ignore", "pipe", "pipe"] : "inherit",
    });
    const said = [];
    program.stdout?.on("data", (piece) => said.push(piece));
    program.stderr?.on("data", (piece) => said.push(piece));
    program.on("error", reject);
    program.on("close", (status) => {
      process.stdout.write(Buffer.concat(said));
      resolve(status === 0);
    });
  });

/** One gate: counts as one test, kept or broken. */
const check = async (title, run) => {
  const kept = await run();
  head(`${title}: ${kept ? "kept" : "broken"}`);
  count(title, kept ? 1 : 0, kept ? 0 : 1);
};

const gates = [
  ["Biome: lint and format", "@biomejs/biome/bin/biome", ["check", "--max-diagnostics=50"]],
  // Built as one: what nodes, pages and tests take from the core is checked once and read as its declarations afterwards.
  ["TypeScript: core, node, web, tests", typeChecker(), ["-b"]],
  [
    "dependency-cruiser: who may import whom",
    "dependency-cruiser/bin/dependency-cruise.mjs",
    ["--config", "dependency-rules.cjs", "src"],
  ],
];

const checkGates = async () => {
  for (const [title, script, args] of gates) await check(title, () => runNode(script, args, { beside: true }));
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

const runTests = async (title, project, workers, beside) => {
  const report = join(repository, ".cache", `results-${project}.json`);
  mkdirSync(join(repository, ".cache"), { recursive: true });
  rmSync(report, { force: true });
  head(`${title}${beside ? "; what it says follows at its end" : ""}`);
  const ended = await runNode(
    "vitest/vitest.mjs",
    [
      "run",
      "--project",
      project,
      `--maxWorkers=${workers}`,
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    { beside },
  );
  const { good, bad } = countResults(report, ended);
  count(title, good, bad);
};

await check("Build", () => buildWhatIsStale());
const runGatesAndPlainTests = async () => {
  await checkGates();
  await runTests("Tests: unit, property, reference, architecture", "plain", availableParallelism());
};
// Records are written, killed and read again by one worker that mostly waits for the disk: the rest goes on beside it.
await Promise.all([runTests("Tests: records", "records", 1, true), runGatesAndPlainTests()]);
await runTests("Tests in a browser", "e2e", availableParallelism());

head("Result (each check above counts as one)");
for (const title of broken) console.log(`failed: ${title}`);
process.exitCode = failed === 0 ? 0 : 1;
console.log(`${passed} passed, ${failed} failed`);
