import type { FastenerUse, Operation } from "#vehicle";
import type { JobCardDocument, StepRecord } from "./documents.ts";
import type { CarAccess, CarRemedy } from "./remedies.ts";

/** One step of a job card, in order. */
export interface JobStep {
  readonly id: string;
  readonly kind: "before" | "access" | "work" | "torque" | "close" | "after";
  readonly label: string;
  readonly place: string | null;
  readonly support: string | null;
  /** Fasteners of this step with torque and stage, whose figure; stages null = not on file. */
  readonly fasteners: readonly FastenerUse[];
  /** The hub-to-arch height must be entered before this step counts as done. */
  readonly needsRideHeight: boolean;
  readonly cautions: readonly number[];
  readonly record: StepRecord | null;
}

export interface JobCard {
  readonly steps: readonly JobStep[];
  /** What must be in the box: always new, and to be at hand if seized. */
  readonly hardware: readonly {
    readonly item: string;
    readonly label: string;
    readonly must: number;
    readonly may: number;
  }[];
  readonly done: number;
}

/** The lift as a piece of work of its own: on the card it is the step before everything, and stands there once. */
const isLift = ({ id, label }: CarAccess): boolean => id === "access/lift@car" || /^lift\b/i.test(label);

const PHASES: readonly Operation["phase"][] = ["chassis", "electrics", "brakes", "alignment"];

/** Steps of the agreed remedies in one order: heights, access, work by phase, final torque at ride height, alignment, road test. */
export function deriveJobCard(remedies: readonly CarRemedy[], document: JobCardDocument | null): JobCard {
  const operations = [...new Map(remedies.flatMap((r) => r.operations.map((o) => [o.id, o] as const))).values()];
  operations.sort((a, b) => PHASES.indexOf(a.operation.phase) - PHASES.indexOf(b.operation.phase));
  const record = (id: string): StepRecord | null => document?.steps.find((s) => s.step === id) ?? null;
  const step = (s: Omit<JobStep, "record">): JobStep => ({ ...s, record: record(s.id) });
  const plain = { place: null, support: null, fasteners: [], needsRideHeight: false, cautions: [] as number[] };
  const steps: JobStep[] = [];
  if (operations.length === 0) return { steps, hardware: [], done: 0 };
  steps.push(
    step({
      ...plain,
      id: "before/heights",
      kind: "before",
      label: "Note hub-to-arch height at all four corners, tyres on the ground",
      needsRideHeight: false,
    }),
  );
  steps.push(
    step({
      ...plain,
      id: "before/lift",
      kind: "before",
      label: "Lift at the maker's points and rock the car",
      cautions: [1, 2],
    }),
  );
  const access = new Map(operations.flatMap((o) => o.access.map((a) => [a.id, a] as const)));
  for (const a of access.values())
    if (!isLift(a)) steps.push(step({ ...plain, id: a.id, kind: "access", label: a.label, place: placeOf(a.id) }));
  for (const o of operations)
    if (o.operation.phase !== "alignment")
      steps.push(
        step({
          id: o.id,
          kind: "work",
          label: o.operation.label,
          place: placeOf(o.id),
          support: o.operation.support || null,
          fasteners: o.operation.fasteners.filter((f) => !f.atRideHeight),
          needsRideHeight: false,
          cautions: [...o.operation.cautions],
        }),
      );
  for (const o of operations) {
    const loaded = o.operation.fasteners.filter((f) => f.atRideHeight);
    if (loaded.length > 0)
      steps.push(
        step({
          id: `torque/${o.id}`,
          kind: "torque",
          label: `Final torque at ride height: ${o.operation.label.toLowerCase()}`,
          place: placeOf(o.id),
          support: "Wheel at its noted hub-to-arch height",
          fasteners: loaded,
          needsRideHeight: true,
          cautions: [12],
        }),
      );
  }
  steps.push(
    step({
      ...plain,
      id: "close/wheels",
      kind: "close",
      label: "Wheels on, tightened in a star, finally on the ground",
      cautions: [13],
    }),
  );
  if (operations.some((o) => o.operation.phase === "brakes"))
    steps.push(
      step({
        ...plain,
        id: "close/pedal",
        kind: "close",
        label: "Pump the pedal until it is hard; look for leaks",
        cautions: [9],
      }),
    );
  if (operations.some((o) => o.operation.needsAlignment) || operations.some((o) => o.operation.phase === "alignment"))
    steps.push(
      step({
        ...plain,
        id: "after/alignment",
        kind: "after",
        label: "Settle, measure heights, align: rear first, then front; steering wheel straight",
      }),
    );
  steps.push(
    step({
      ...plain,
      id: "after/road-test",
      kind: "after",
      label: "Road test on the same stretch, by somebody else than the fitter where it can be",
      cautions: [18],
    }),
  );
  return {
    steps,
    hardware: hardwareOf(operations.map((o) => o.operation)),
    done: steps.filter((s) => s.record).length,
  };
}

const placeOf = (id: string): string | null => {
  const place = id.slice(id.indexOf("@") + 1);
  return id.includes("@") && place !== "car" ? place.replace("-", " ") : null;
};

function hardwareOf(operations: readonly Operation[]): JobCard["hardware"] {
  const out = new Map<string, { item: string; label: string; must: number; may: number }>();
  for (const f of operations.flatMap((o) => o.fasteners)) {
    if (f.policy === "reuse") continue;
    const known = out.get(f.item) ?? { item: f.item, label: f.label, must: 0, may: 0 };
    if (f.policy === "always-new") known.must += f.count;
    else known.may += f.count;
    out.set(f.item, known);
  }
  return [...out.values()].sort((a, b) => a.item.localeCompare(b.item));
}
