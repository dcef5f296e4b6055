import { describe, expect, it } from "vitest";
import type { FamilyWork, Operation } from "#vehicle";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { priceVisit } from "../../src/casework/cases/price-visit.ts";
import { usualPlan } from "../../src/casework/cases/usual-plan.ts";
import { look, operation, rates, reading, record, solver, work } from "./made-visit.ts";

const axleWork: Operation = { ...operation("renew-fluid", 0.5, "brakes"), scope: "axle", access: [] };
const limits: FamilyWork["limits"] = [
  ...work.limits,
  {
    place: "pads/thickness",
    axle: null,
    quantity: "pad-thickness",
    lower: 0.003,
    upper: null,
    loadState: null,
    owner: "maker",
    source: "invented",
    grade: 2,
  },
];
const brakes: FamilyWork = {
  ...work,
  limits,
  operations: [...work.operations, operation("renew-pads", 0.4, "brakes"), axleWork],
  remedies: [
    {
      id: "pads",
      label: "Pads",
      axle: "front",
      cures: ["pads/thickness"],
      operations: ["renew-pads"],
      parts: [{ part: "pads", count: 1 }],
      pair: true,
    },
    {
      id: "discs-and-pads",
      label: "Discs and pads",
      axle: "front",
      cures: ["disc/thickness", "pads/thickness"],
      operations: ["renew-disc"],
      parts: [
        { part: "disc", count: 1 },
        { part: "pads", count: 1 },
      ],
      pair: true,
    },
    {
      id: "fluid",
      label: "Brake fluid",
      axle: null,
      cures: ["brakes/fluid"],
      operations: ["renew-fluid"],
      parts: [{ part: "fluid", count: 1 }],
      pair: false,
    },
  ],
  parts: [
    ...work.parts,
    { id: "pads", label: "Pads", priceCents: 3000, kind: "part", contents: [] },
    { id: "fluid", label: "Fluid", priceCents: 1100, kind: "consumable", contents: [] },
  ],
};
const wornDiscs = [1, 2, 3, 4].map((i) =>
  look("front-left/disc/thickness", reading("thickness", 0.0215, 0.000005, String(i))),
);
const thinDisc = [1, 2, 3, 4].map((i) =>
  look("front-left/disc/thickness", reading("thickness", 0.02203, 0.00003, String(i))),
);
const thinPads = look("front-right/pads/thickness", reading("pad-thickness", 0.0021, 0.00006));
const wet = look("front/brakes/fluid", reading("boiling-point", 150, 2.5));
const appraise = (looks: Parameters<typeof record>[0], change: Parameters<typeof record>[1] = {}) =>
  appraiseVisit(record(looks, { work: brakes, ...change }), solver);
const ids = (a: ReturnType<typeof appraise>) => a.remedies.map((r) => r.id);

describe("a remedy whose places another one covers", () => {
  it("is left out and said why; pads are bought once, and the sum re-adds by hand", () => {
    const a = appraise([...wornDiscs, thinPads]);
    expect(ids(a)).toEqual(["discs-and-pads@front"]);
    expect(a.covered).toEqual([
      { id: "pads@front", label: "Pads", by: "discs-and-pads@front", why: "Discs and pads does this work too." },
    ]);
    expect(a.remedies[0]?.findings.map((f) => f.place)).toEqual([
      "front-left/disc/thickness",
      "front-right/pads/thickness",
    ]);
    // Two discs at 90, two sets of pads at 30; 2 x 0.8 own, 2 x 0.1 wheels, 0.2 lift = 2.0 h at 90; the visit 25.
    expect(a.plan.totals[0]).toBe(18_000 + 6000 + 2 * 9000 + 2500);
  });

  it("stays where the other is less urgent: worn pads do not ask for discs that are only watched", () => {
    const a = appraise([...thinDisc, thinPads]);
    expect(a.remedies.find((r) => r.id === "pads@front")?.grade).toBe(2);
    expect(ids(a)).toContain("discs-and-pads@front");
    expect(a.covered).toEqual([]);
  });

  it("comes back where the owner declines the other, and stays where it alone was agreed to", () => {
    const declined = { ...usualPlan(90_000), declined: ["discs-and-pads@front"] };
    expect(ids(appraise([...wornDiscs, thinPads], { plan: declined }))).toContain("pads@front");
    const agreed = { ...usualPlan(90_000), agreed: [{ remedy: "pads@front", by: "owner", at: "2026-03-12" }] };
    expect(ids(appraise([...wornDiscs, thinPads], { plan: agreed }))).toContain("pads@front");
    const both = {
      ...agreed,
      agreed: ["pads@front", "discs-and-pads@front"].map((remedy) => ({ remedy, by: "o", at: "2026-03-12" })),
    };
    expect(ids(appraise([...wornDiscs, thinPads], { plan: both }))).toEqual(["discs-and-pads@front"]);
  });
});

describe("a remedy without a side", () => {
  const fluid = {
    ...brakes,
    limits: [
      ...limits,
      {
        ...limits[0],
        place: "brakes/fluid",
        axle: null,
        quantity: "boiling-point" as const,
        lower: 165,
        upper: null,
        grade: 2 as const,
      } as FamilyWork["limits"][number],
    ],
  };

  it("counts its parts and its work once: hand arithmetic", () => {
    const a = appraise([wet], { work: fluid });
    const [remedy] = a.remedies;
    expect(remedy?.id).toBe("fluid@front");
    expect(remedy?.parts).toEqual([{ id: "fluid@front", part: "fluid", label: "Fluid", priceCents: 1100, count: 1 }]);
    // One fluid at 11, half an hour at 90, the visit 25.
    expect(priceVisit(a.remedies, rates).total).toBe(1100 + 4500 + 2500);
  });
});

describe("the job card", () => {
  it("has the lift once, however many operations list it", () => {
    const plan = {
      ...usualPlan(90_000),
      agreed: [{ remedy: "discs-and-pads@front", by: "owner", at: "2026-03-12" }],
    };
    const { jobCard } = appraise(wornDiscs, { plan });
    expect(jobCard.steps.filter((s) => /\blift\b/i.test(s.label)).map((s) => s.id)).toEqual(["before/lift"]);
    expect(jobCard.steps.some((s) => s.id === "access/wheel-off@front-left")).toBe(true);
  });
});
