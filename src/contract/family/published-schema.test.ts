import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { editSheet } from "../../../test/family-sheets/edit-sheet.ts";
import { familyJsonSchema } from "./index.ts";

const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8"));
const demoFolder = new URL("../../demo/families/", import.meta.url);
const demoFiles = readdirSync(demoFolder);

interface Node {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly [other: string]: unknown;
}

/** Every property of every object in a schema, with its path. */
function propertiesOf(node: unknown, path = ""): [string, Node][] {
  if (typeof node !== "object" || node === null) return [];
  const own = Object.entries((node as Node).properties ?? {}).map(([key, inner]): [string, Node] => [
    `${path}.${key}`,
    inner,
  ]);
  return [...own, ...Object.entries(node).flatMap(([key, inner]) => propertiesOf(inner, `${path}.${key}`))];
}

describe("the published schema of a family sheet", () => {
  const schema = familyJsonSchema();

  it("is the one in docs, in draft 2020-12", () => {
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(read("../../../docs/family.schema.json")).toEqual(schema);
  });

  // Read back into a validator by another way than the one it was written from.
  it.each(demoFiles)("accepts %s and refuses it with an unknown key, a missing key and a wrong type", (file) => {
    const validator = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]);
    const sheet: unknown = JSON.parse(readFileSync(new URL(file, demoFolder), "utf8"));
    expect(validator.safeParse(sheet).success).toBe(true);
    expect(validator.safeParse(editSheet(sheet, [{ set: "front.links[0].colour", to: "red" }])).success).toBe(false);
    expect(validator.safeParse(editSheet(sheet, [{ remove: "rear.spring.rate_n_per_mm" }])).success).toBe(false);
    expect(validator.safeParse(editSheet(sheet, [{ set: "front.track_mm", to: "1574" }])).success).toBe(false);
  });

  it("describes every key, and says the unit of every key that has one", () => {
    const undescribed = propertiesOf(schema).filter(
      ([, node]) => node.description === undefined && node.$ref === undefined,
    );
    expect(undescribed.map(([path]) => path)).toEqual([]);
    const inMm = propertiesOf(schema).filter(([path]) => path.endsWith("_mm"));
    expect(inMm.length).toBeGreaterThan(40);
  });
});
