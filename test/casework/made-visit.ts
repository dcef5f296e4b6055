import loadHighs from "highs";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { highsSolver } from "#engines/planning";
import type { Family, FamilyWork, Operation, QuantityName } from "#vehicle";
import type { VisitRecord } from "../../src/casework/cases/appraise.ts";
import type { LookContent, StoredLook } from "../../src/casework/cases/look.ts";

/** The solver of every test. */
export const solver = highsSolver(await loadHighs());

/** The invented family the visits are made with. */
export function ouzel(): Family {
  const parsed = parseFamily(demoFamilySheets["ouzel-saloon"]);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
}

/** One piece of work at a corner, with a bolt that is always new. */
export const operation = (id: string, hours: number, phase: Operation["phase"] = "chassis"): Operation => ({
  id,
  label: `Do ${id}`,
  hours,
  scope: "corner",
  phase,
  access: ["wheel-off", "lift"],
  fasteners: [
    {
      item: "bolt-m14",
      label: "Bolt M14 x 1.5",
      count: 1,
      policy: "always-new",
      locker: "none",
      grease: false,
      stages: [{ torque: 100 }, { angle: Math.PI / 2 }],
      owner: "workshop",
      source: "invented",
      atRideHeight: phase === "chassis",
    },
  ],
  support: "hold the knuckle",
  cautions: [1],
  loosens: phase === "chassis" ? ["rear-toe"] : ["wheel"],
  needsAlignment: phase === "chassis",
  source: "invented",
});

/** What the family knows of work, made by hand so that its sums can be done by hand. */
export const work: FamilyWork = {
  origin: "family",
  limits: [
    {
      place: "disc/thickness",
      axle: "front",
      quantity: "thickness",
      lower: 0.022,
      upper: null,
      loadState: null,
      owner: "maker",
      source: "invented",
      grade: 3,
    },
    {
      place: "disc/thickness",
      axle: "front",
      quantity: "thickness-variation",
      lower: null,
      upper: 0.000015,
      loadState: null,
      owner: "workshop",
      source: "invented",
      grade: 3,
    },
    {
      place: "trailing-link/inner-bush",
      axle: "rear",
      quantity: "lost-travel",
      lower: null,
      upper: 0.0032,
      loadState: null,
      owner: "practice",
      source: "common practice, no source",
      grade: 3,
    },
  ],
  access: [
    { id: "wheel-off", label: "Wheel off and on", hours: 0.1, scope: "corner" },
    { id: "lift", label: "Lift and lower", hours: 0.2, scope: "car" },
  ],
  operations: [operation("press-trailing-bush", 1), operation("renew-disc", 0.8, "brakes")],
  remedies: [
    {
      id: "trailing-bushes",
      label: "Trailing link bushes",
      axle: "rear",
      cures: ["trailing-link/inner-bush"],
      operations: ["press-trailing-bush"],
      parts: [{ part: "trailing-bush", count: 1 }],
      pair: true,
    },
    {
      id: "front-discs",
      label: "Front discs",
      axle: "front",
      cures: ["disc/thickness"],
      operations: ["renew-disc"],
      parts: [{ part: "disc", count: 1 }],
      pair: true,
    },
  ],
  parts: [
    { id: "trailing-bush", label: "Trailing bush", priceCents: 4000, kind: "part", contents: [] },
    { id: "disc", label: "Disc", priceCents: 9000, kind: "part", contents: [] },
  ],
  knownFaults: [],
  alignment: [],
};

export const rates = {
  workshop: "Invented",
  currency: "EUR",
  labourCentsPerHour: 9000,
  taxShare: 0.2,
  visitCents: 2500,
};

let sequence = 0;
/** A look of the visit, stored in the order of the calls. */
export function look(place: string, content: LookContent): StoredLook {
  sequence += 1;
  const at = "2026-03-12T09:00:00Z";
  return {
    id: `look-${sequence}`,
    car: "car",
    visit: "visit",
    place,
    content,
    loadState: null,
    instrument: null,
    photo: null,
    note: null,
    who: "I. Marden",
    at,
    sequence,
    receivedAt: at,
    clockOff: false,
  };
}

export const reading = (
  quantity: QuantityName,
  value: number,
  u: number,
  point: string | null = null,
): LookContent => ({ kind: "reading", quantity, value, u, point });

/** Everything on record of a visit with these looks. */
export function record(looks: readonly StoredLook[], change: Partial<VisitRecord> = {}): VisitRecord {
  return {
    family: ouzel(),
    work,
    rates,
    visit: {
      car: "car",
      odometerKm: 90_000,
      date: "2026-03-12",
      by: "I. Marden",
      bay: null,
      done: [],
      waits: [],
      settled: true,
      closed: false,
    },
    enquiry: null,
    plan: null,
    jobCard: null,
    handOver: null,
    looks,
    past: [],
    ...change,
  };
}
