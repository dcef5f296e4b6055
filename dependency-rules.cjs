/**
 * Who may import whom, and which package where. Everything that does not stand here fails, type-only imports included.
 * `anyone` may be imported by every folder; engines import each other only by the four doors named.
 */
const anyone = ["quantity"];
const engines = "engines/[^/]+";

/** folder -> folders it may import */
const layers = {
  quantity: [],
  numeric: [],
  vehicle: ["numeric"],
  "engines/[^/]+": ["vehicle", "numeric"],
  casework: [engines, "vehicle", "numeric"],
  drawing: ["casework", engines, "vehicle"],
  report: ["drawing", "casework"],
  contract: ["casework", engines, "vehicle", "numeric"],
  records: ["casework"],
  server: ["contract", "casework", "records", "report", "drawing", "demo"],
  cli: ["contract", "casework", "records", "report", "drawing", "demo"],
  web: ["contract", "casework", "drawing"],
  demo: ["casework", engines, "vehicle", "numeric"],
};

/** Folders that see only the types of these others. */
const typesOnly = { drawing: ["casework", engines], records: ["casework"] };

/** engine -> sibling engine */
const siblings = { alignment: ["linkage"], ride: ["linkage"], brakes: ["ride"], fit: ["linkage"] };

/** folder -> packages; a folder that is not named imports none. */
const packages = {
  contract: ["zod"],
  drawing: ["d3-scale"],
  records: ["better-sqlite3", "kysely"],
  report: ["pdfkit", "source-sans"],
  server: ["highs", "fastify", "@fastify/static"],
  cli: ["highs", "commander"],
  web: ["react", "react-dom", "@tanstack/react-router", "comlink", "highs", "source-sans", "vite"],
};
/** What tests may import on top: zod, to make small doors of their own. */
const testPackages = ["vitest", "fast-check", "zod"];

/** Folders that may use Node's own modules. */
const onNode = ["report", "records", "server", "cli"];

const test = "\\.test\\.tsx?$";
const any = (names) => `(${names.join("|")})`;
const inside = (names) => `^src/${any(names)}/`;
const packageTypes = ["npm", "npm-dev", "npm-optional", "npm-peer", "npm-bundled", "npm-no-pkg", "npm-unknown"];

const nameOf = (folder) => folder.split("/")[0];

const layerRule = (from, own, allowed, label) => ({
  name: `layer-${nameOf(label)}`,
  comment: `${label} may import ${[...anyone, ...allowed.map(nameOf)].join(", ")} and nothing else of src`,
  severity: "error",
  from,
  to: { path: "^src/", pathNot: inside([own, ...anyone, ...allowed]) },
});

const layerRules = Object.entries(layers)
  .filter(([folder]) => folder !== engines)
  .map(([folder, allowed]) => layerRule({ path: `^src/${folder}/` }, folder, allowed, folder));

const engineRules = [
  layerRule(
    { path: "^src/engines/([^/]+)/", pathNot: inside(Object.keys(siblings).map((engine) => `engines/${engine}`)) },
    "engines/$1",
    layers[engines],
    "engines",
  ),
  ...Object.entries(siblings).map(([engine, doors]) =>
    layerRule(
      { path: `^src/engines/${engine}/` },
      `engines/${engine}`,
      [...layers[engines], ...doors.map((door) => `engines/${door}`)],
      `engines/${engine}`,
    ),
  ),
];

const typesOnlyRules = Object.entries(typesOnly).map(([folder, others]) => ({
  name: "types-only",
  comment: `${folder} sees only the types of ${others.map(nameOf).join(", ")}`,
  severity: "error",
  from: { path: `^src/${folder}/`, pathNot: test },
  to: { path: inside(others), dependencyTypesNot: ["type-only"] },
}));

const packageRules = Object.keys(layers).flatMap((folder) => {
  const allowed = packages[folder] ?? [];
  const rule = (from, names) => ({
    name: "package",
    comment: `${nameOf(folder)} may import ${names.length === 0 ? "no package" : `of packages only ${names.join(", ")}`}`,
    severity: "error",
    from,
    to: {
      dependencyTypes: packageTypes,
      ...(names.length === 0 ? {} : { pathNot: `(^|/)node_modules/(@types/)?${any(names)}/` }),
    },
  });
  return [
    rule({ path: `^src/${folder}/`, pathNot: test }, allowed),
    rule({ path: `^src/${folder}/.*${test}` }, [...allowed, ...testPackages]),
  ];
});

module.exports = {
  forbidden: [
    {
      name: "cycle",
      comment: "Modules that import each other, by types alone too, cannot be understood one at a time.",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "unresolved",
      comment: "An import that leads nowhere; the address of a file (?url) is the bundler's to find.",
      severity: "error",
      from: { path: "^src/" },
      to: { couldNotResolve: true, pathNot: "\\?url$" },
    },
    {
      name: "front-door",
      comment: "Another folder is entered by its index.ts only.",
      severity: "error",
      from: { path: "^src/((?:engines/)?[^/]+)/" },
      to: { path: "^src/", pathNot: ["^src/$1/", "^src/(engines/)?[^/]+/index\\.ts$"] },
    },
    {
      name: "node-builtin",
      comment: `Node's own modules belong to ${onNode.join(", ")}.`,
      severity: "error",
      from: { path: "^src/", pathNot: [inside(onNode), test] },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "engine-on-screen-thread",
      comment: "The pages reach the engines by casework and contract, run in a worker.",
      severity: "error",
      from: { path: "^src/web/" },
      to: { path: "^src/engines/" },
    },
    {
      name: "outside-src",
      comment: "The program imports nothing of its tests and tools.",
      severity: "error",
      from: { path: "^src/", pathNot: test },
      to: { path: "^(test|tools|timing|bin|docs)/" },
    },
    {
      name: "test-code",
      comment: "Nothing imports a test.",
      severity: "error",
      from: { path: "^src/" },
      to: { path: test },
    },
    {
      name: "unknown-folder",
      comment: "A new folder of src takes its place in the table first.",
      severity: "error",
      from: { path: "^src/", pathNot: inside(Object.keys(layers)) },
      to: {},
    },
    ...layerRules,
    ...engineRules,
    ...typesOnlyRules,
    ...packageRules,
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.base.json" },
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["types", "import", "node", "default"],
      extensions: [".ts", ".tsx", ".js", ".jsx", ".json", ".d.ts"],
    },
  },
};
