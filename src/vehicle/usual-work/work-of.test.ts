import { describe, expect, it } from "vitest";
import type { Family } from "../family.ts";
import type { FamilyWork } from "../family-work.ts";
import { positionsOf } from "../positions/positions-of.ts";
import { familyFromSilhouette, silhouetteLayouts } from "../silhouette.ts";
import { workOf } from "./work-of.ts";

const silhouettes = silhouetteLayouts.front.flatMap((frontLayout) =>
  silhouetteLayouts.rear.map((rearLayout): readonly [string, Family] => {
    const made = familyFromSilhouette({ frontLayout, rearLayout, drivenAxle: "both" });
    if ("findings" in made) throw new Error(JSON.stringify(made.findings));
    return [`${frontLayout} and ${rearLayout}`, made.family];
  }),
);

const someone = silhouettes[0]?.[1];
if (!someone) throw new Error("no silhouette");

const nothing: FamilyWork = {
  origin: "family",
  limits: [],
  access: [],
  operations: [],
  remedies: [],
  parts: [],
  knownFaults: [],
  alignment: [],
};

describe("the usual work", () => {
  it.each(silhouettes)("of %s cures every position, by operations, access and parts that exist", (_, family) => {
    const work = workOf(family);
    expect(work.origin).toBe("usual");
    for (const list of [work.access, work.operations, work.remedies, work.parts])
      expect(new Set(list.map(({ id }) => id)).size).toBe(list.length);
    const uncured = positionsOf(family).filter(
      ({ axle, item, detail }) =>
        !work.remedies.some((r) => r.axle === axle && r.cures.includes(detail === null ? item : `${item}/${detail}`)),
    );
    expect(uncured.map(({ id }) => id)).toEqual([]);
    const operations = new Set(work.operations.map(({ id }) => id));
    const parts = new Set(work.parts.map(({ id }) => id));
    const access = new Set(work.access.map(({ id }) => id));
    for (const remedy of work.remedies) {
      expect(remedy.operations.filter((id) => !operations.has(id))).toEqual([]);
      expect(remedy.parts.filter(({ part }) => !parts.has(part))).toEqual([]);
    }
    for (const operation of work.operations) expect(operation.access.filter((id) => !access.has(id))).toEqual([]);
  });

  it.each(silhouettes)("of %s claims nothing: no price, no torque, no limit but practice and memory", (_, family) => {
    const work = workOf(family);
    expect(work.parts.filter(({ priceCents }) => priceCents !== null)).toEqual([]);
    const fasteners = work.operations.flatMap((operation) => operation.fasteners);
    expect(fasteners.filter(({ stages }) => stages !== null)).toEqual([]);
    expect(new Set(work.limits.map(({ owner }) => owner))).toEqual(new Set(["practice", "memory"]));
    for (const limit of work.limits) expect(limit.grade).toBeLessThanOrEqual(2);
    for (const { source } of work.operations) expect(source).toContain("invented");
    expect([work.knownFaults, work.alignment]).toEqual([[], []]);
  });

  it("tells layouts apart: an upper front link of five takes the damper out, a strut's insert takes longer", () => {
    const find = (front: Family["front"]["layout"], id: string) => {
      const family = silhouettes.find(([, one]) => one.front.layout === front)?.[1];
      return family && workOf(family).operations.find((operation) => operation.id === id);
    };
    expect(find("five-link", "renew-front-upper-front-link")?.access).toContain("front-damper-out");
    expect(find("five-link", "renew-front-lower-front-link")?.access).not.toContain("front-damper-out");
    expect(find("strut", "renew-front-lower-arm")?.hours).not.toBe(
      find("double-wishbone", "renew-front-lower-arm")?.hours,
    );
  });
});

describe("the work of a family with a sheet", () => {
  it("is its own where it names remedies", () => {
    const usual = workOf(someone);
    const own: FamilyWork = { ...usual, origin: "family", limits: [] };
    expect(workOf({ ...someone, work: own })).toBe(own);
  });

  it("borrows operations and remedies where it names none, its own entries first", () => {
    const part = {
      id: "rear-spring",
      label: "Spring, blue dot",
      priceCents: 7150,
      kind: "part",
      contents: [],
    } as const;
    const work = workOf({ ...someone, work: { ...nothing, parts: [part] } });
    expect(work.origin).toBe("usual");
    expect(work.remedies).toEqual(workOf(someone).remedies);
    expect(work.parts.filter(({ id }) => id === "rear-spring")).toEqual([part]);
    expect(work.limits).toEqual(workOf(someone).limits);
  });
});
