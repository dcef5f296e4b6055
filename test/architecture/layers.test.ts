import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findOffences, findTypeOffences, type Offence, type PlantedTree, plantTree } from "./planted-tree.ts";

/** An offence against the layers: what is planted, and which rule must object to which file. */
interface Planted {
  readonly what: string;
  readonly files: Readonly<Record<string, string>>;
  readonly rule: string;
  readonly from: string;
}

const plant = (what: string, rule: string, from: string, text: string, more: Record<string, string> = {}): Planted => ({
  what,
  files: { [from]: text, ...more },
  rule,
  from,
});

const planted: readonly Planted[] = [
  plant(
    "a value from a layer above",
    "layer-vehicle",
    "src/vehicle/upward-value.ts",
    'import { assess } from "#casework";\nexport const seen = assess();\n',
  ),
  plant(
    "a type from a layer above",
    "layer-numeric",
    "src/numeric/upward-type.ts",
    'import type { Wheel } from "#vehicle";\nexport type Seen = Wheel;\n',
  ),
  plant(
    "an inline type from a layer above",
    "layer-quantity",
    "src/quantity/upward-inline-type.ts",
    'export type Seen = import("#numeric").Length;\n',
  ),
  plant(
    "a sibling engine that is not named",
    "layer-engines",
    "src/engines/linkage/sibling.ts",
    'import { computeRide } from "#engines/ride";\nexport const seen = computeRide;\n',
  ),
  plant(
    "another sibling of an engine that has one",
    "layer-engines",
    "src/engines/ride/other-sibling.ts",
    'import { wear } from "#engines/life";\nexport const seen = wear;\n',
    { "src/engines/life/index.ts": "export const wear = 1;\n" },
  ),
  plant(
    "the inside of a sibling engine",
    "front-door",
    "src/engines/ride/sibling-inside.ts",
    'import { solveInside } from "../linkage/inside.ts";\nexport const seen = solveInside;\n',
  ),
  plant(
    "the inside of a folder below",
    "front-door",
    "src/vehicle/deep.ts",
    'import { norm } from "../numeric/norm.ts";\nexport const seen = norm;\n',
  ),
  plant(
    "a Node module in core",
    "node-builtin",
    "src/numeric/node-builtin.ts",
    'import { readFileSync } from "node:fs";\nexport const seen = readFileSync;\n',
  ),
  plant(
    "a type of a Node module in core",
    "node-builtin",
    "src/casework/node-type.ts",
    'import type { Stats } from "node:fs";\nexport type Seen = Stats;\n',
  ),
  plant(
    "a Node module without its prefix in a page",
    "node-builtin",
    "src/web/node-builtin.ts",
    'import { join } from "path";\nexport const seen = join;\n',
  ),
  plant(
    "a package in core",
    "package",
    "src/casework/package.ts",
    'import { z } from "zod";\nexport const seen = z;\n',
  ),
  plant(
    "the types of a package in core",
    "package",
    "src/vehicle/package-type.ts",
    'import type { ScaleLinear } from "d3-scale";\nexport type Seen = ScaleLinear<number, number>;\n',
  ),
  plant(
    "a package of another folder",
    "package",
    "src/server/package.ts",
    'import { Command } from "commander";\nexport const seen = Command;\n',
  ),
  plant(
    "a test tool outside tests",
    "package",
    "src/numeric/test-tool.ts",
    'import { expect } from "vitest";\nexport const seen = expect;\n',
  ),
  plant(
    "a package that is not there",
    "unresolved",
    "src/cli/absent.ts",
    'import absent from "no-such-package-here";\nexport const seen = absent;\n',
  ),
  plant(
    "a cycle",
    "cycle",
    "src/vehicle/circle-one.ts",
    'import { two } from "./circle-two.ts";\nexport const one = (): number => two;\n',
    { "src/vehicle/circle-two.ts": 'import { one } from "./circle-one.ts";\nexport const two = one();\n' },
  ),
  plant(
    "a cycle of types alone",
    "cycle",
    "src/vehicle/type-circle-one.ts",
    'import type { Two } from "./type-circle-two.ts";\nexport interface One { readonly two: Two | null }\n',
    {
      "src/vehicle/type-circle-two.ts":
        'import type { One } from "./type-circle-one.ts";\nexport interface Two { readonly one: One | null }\n',
    },
  ),
  plant(
    "a cycle through the folder's own front door",
    "cycle",
    "src/numeric/index.ts",
    'export { norm } from "./norm.ts";\nexport type { Length } from "./norm.ts";\nexport { seen } from "./own-door.ts";\n',
    { "src/numeric/own-door.ts": 'import { norm } from "./index.ts";\nexport const seen = norm;\n' },
  ),
  plant(
    "a dynamic import from above",
    "layer-drawing",
    "src/drawing/dynamic.ts",
    'export const seen = (): Promise<unknown> => import("#report");\n',
  ),
  plant("a re-export from above", "layer-contract", "src/contract/re-export.ts", 'export { serve } from "#server";\n'),
  plant(
    "a re-export of everything from above",
    "layer-report",
    "src/report/re-export-all.ts",
    'export * from "#contract";\n',
  ),
  plant(
    "the server in a page",
    "layer-web",
    "src/web/server.ts",
    'import { serve } from "#server";\nexport const seen = serve;\n',
  ),
  plant(
    "the records in a page, by types alone",
    "layer-web",
    "src/web/records.ts",
    'import type { load } from "#records";\nexport type Seen = typeof load;\n',
  ),
  plant(
    "an engine in a page",
    "engine-on-screen-thread",
    "src/web/engine.ts",
    'import { solve } from "#engines/linkage";\nexport const seen = solve;\n',
  ),
  plant(
    "the wire in the records",
    "layer-records",
    "src/records/wire.ts",
    'import type { wire } from "#contract";\nexport type Seen = typeof wire;\n',
  ),
  plant(
    "a value of casework in a drawing",
    "types-only",
    "src/drawing/value.ts",
    'import { assess } from "#casework";\nexport const seen = assess();\n',
  ),
  plant(
    "a page in the server",
    "layer-server",
    "src/server/page.ts",
    'import { page } from "../web/index.ts";\nexport const seen = page;\n',
  ),
  plant(
    "a tool in the program",
    "outside-src",
    "src/cli/tool.ts",
    'import { tool } from "../../tools/tool.ts";\nexport const seen = tool;\n',
    { "tools/tool.ts": "export const tool = 1;\n" },
  ),
  plant(
    "a test in the program",
    "test-code",
    "src/numeric/of-a-test.ts",
    'import { twice } from "./norm.test.ts";\nexport const seen = twice;\n',
    { "src/numeric/norm.test.ts": "export const twice = 2;\n" },
  ),
  plant(
    "a folder without a place",
    "unknown-folder",
    "src/garage/index.ts",
    'import { norm } from "#numeric";\nexport const seen = norm;\n',
  ),
];

describe("who may import whom", () => {
  let sound: PlantedTree;
  let offending: PlantedTree;
  let offences: readonly Offence[];

  beforeAll(async () => {
    sound = plantTree({});
    offending = plantTree(Object.assign({}, ...planted.map(({ files }) => files)));
    offences = await findOffences(offending.folder);
  });
  afterAll(() => {
    sound.remove();
    offending.remove();
  });

  it("has nothing against the sound tree", async () => {
    expect(await findOffences(sound.folder)).toEqual([]);
    expect(await findTypeOffences(sound.folder, "tsconfig.core.json")).toEqual([]);
  });

  it.each(planted)("catches $what", ({ rule, from }) => {
    expect(offences).toContainEqual({ rule, from });
  });
});

describe("what a runtime does not have", () => {
  const core = {
    "src/numeric/page.ts": "export const seen = document.title;\n",
    "src/vehicle/page-type.ts": "export type Seen = HTMLElement;\n",
    "src/engines/linkage/machine.ts": "export const seen = process.env;\n",
    "src/casework/buffer.ts": "export const seen = (one: Buffer): number => one.length;\n",
    "src/contract/node.ts": 'import { readFileSync } from "node:fs";\nexport const seen = readFileSync;\n',
    "src/drawing/log.ts": 'console.log("seen");\nexport const seen = 1;\n',
    "src/demo/clock.ts": "export const seen = performance.now();\n",
  };
  let tree: PlantedTree;
  let offences: readonly Offence[];

  beforeAll(async () => {
    tree = plantTree({ ...core, "src/web/machine.ts": "export const seen = process.env;\n" });
    offences = await findTypeOffences(tree.folder, "tsconfig.core.json");
  });
  afterAll(() => tree.remove());

  it.each(Object.keys(core))("the compiler catches %s", (from) => {
    expect(offences.map((offence) => offence.from)).toContain(from);
  });

  it("the compiler catches the machine in a page", async () => {
    const inPages = await findTypeOffences(tree.folder, "tsconfig.web.json");
    expect(inPages.map((offence) => offence.from)).toContain("src/web/machine.ts");
  });
});
