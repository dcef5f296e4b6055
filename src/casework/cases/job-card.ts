import type { FastenerUse, Operation } from "#vehicle";
import { closedWords, isCover, isWheelOff, openedWords } from "./access-words.ts";
import type { JobCardDocument, StepRecord } from "./documents.ts";
import type { CarAccess, CarOperation, CarRemedy } from "./remedies.ts";

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

/** A step that only says what to do: no support, no fastener. */
type PlainStep = Pick<JobStep, "id" | "kind" | "label"> & Partial<Pick<JobStep, "place" | "cautions">>;

const plainStep = (step: PlainStep): Unsigned => ({
  place: null,
  support: null,
  fasteners: [],
  needsRideHeight: false,
  cautions: [],
  ...step,
});

type Unsigned = Omit<JobStep, "record">;

/**
 * Steps of the agreed remedies in one order: heights, what is opened, work by phase, what is closed in reverse with the
 * wheels last, final torque at ride height, covers that had to stay off for it, pedal, alignment, road test.
 */
export function deriveJobCard(remedies: readonly CarRemedy[], document: JobCardDocument | null): JobCard {
  const operations = [...new Map(remedies.flatMap((r) => r.operations.map((o) => [o.id, o] as const))).values()];
  operations.sort((a, b) => PHASES.indexOf(a.operation.phase) - PHASES.indexOf(b.operation.phase));
  if (operations.length === 0) return { steps: [], hardware: [], done: 0 };
  const opened = openedPieces(operations);
  const loaded = operations.filter((o) => loadedFasteners(o).length > 0);
  const isOpenForTorque = ({ id, label }: CarAccess): boolean =>
    isCover(label) && loaded.some((o) => o.access.some((a) => a.id === id));
  const closed = opened.filter((a) => !isWheelOff(a.label)).toReversed();
  const steps: readonly Unsigned[] = [
    ...beforeSteps,
    ...opened.map((a) => plainStep({ id: a.id, kind: "access", label: openedWords(a.label), place: placeOf(a.id) })),
    ...operations.flatMap((o) => (o.operation.phase === "alignment" ? [] : [workStep(o)])),
    ...closed.filter((a) => !isOpenForTorque(a)).map(closeStep),
    ...wheelSteps(opened),
    ...loaded.map(torqueStep),
    ...closed.filter(isOpenForTorque).map(closeStep),
    ...lastSteps(operations),
  ];
  const signed = steps.map((s) => ({ ...s, record: document?.steps.find(({ step }) => step === s.id) ?? null }));
  return {
    steps: signed,
    hardware: hardwareOf(operations.map((o) => o.operation)),
    done: signed.filter((s) => s.record).length,
  };
}

const beforeSteps: readonly Unsigned[] = [
  plainStep({
    id: "before/heights",
    kind: "before",
    label: "Note hub-to-arch height at all four corners, tyres on the ground",
  }),
  plainStep({
    id: "before/lift",
    kind: "before",
    label: "Lift at the maker's points and rock the car",
    cautions: [1, 2],
  }),
];

/** What is taken off or out of the way, each once: wheels first, then what comes off, then what is moved aside. */
function openedPieces(operations: readonly CarOperation[]): readonly CarAccess[] {
  const pieces = new Map(operations.flatMap((o) => o.access.map((a) => [a.id, a] as const)));
  const rank = ({ label }: CarAccess): number => (isWheelOff(label) ? 0 : isCover(label) ? 1 : 2);
  return [...pieces.values()].filter((a) => !isLift(a)).toSorted((a, b) => rank(a) - rank(b));
}

const loadedFasteners = ({ operation }: CarOperation) => operation.fasteners.filter((f) => f.atRideHeight);

const workStep = (o: CarOperation): Unsigned => ({
  id: o.id,
  kind: "work",
  label: o.operation.label,
  place: placeOf(o.id),
  support: o.operation.support || null,
  fasteners: o.operation.fasteners.filter((f) => !f.atRideHeight),
  needsRideHeight: false,
  cautions: [...o.operation.cautions],
});

const closeStep = (a: CarAccess): Unsigned =>
  plainStep({ id: `close/${a.id}`, kind: "close", label: closedWords(a.label), place: placeOf(a.id) });

const torqueStep = (o: CarOperation): Unsigned => ({
  id: `torque/${o.id}`,
  kind: "torque",
  label: `Final torque at ride height: ${o.operation.label.toLowerCase()}`,
  place: placeOf(o.id),
  support: "Wheel at its noted hub-to-arch height",
  fasteners: loadedFasteners(o),
  needsRideHeight: true,
  cautions: [12],
});

/** All wheels that are off go on in one step; none where no wheel was off. */
function wheelSteps(opened: readonly CarAccess[]): readonly Unsigned[] {
  const off = opened.filter((a) => isWheelOff(a.label)).flatMap((a) => placeOf(a.id) ?? []);
  if (!opened.some((a) => isWheelOff(a.label))) return [];
  return [
    plainStep({
      id: "close/wheels",
      kind: "close",
      label: `${off.length === 1 ? "Wheel" : "Wheels"} on, tightened in a star, finally on the ground`,
      place: off.length === 0 ? null : off.join(", "),
      cautions: [13],
    }),
  ];
}

function lastSteps(operations: readonly CarOperation[]): readonly Unsigned[] {
  const has = (phase: Operation["phase"]): boolean => operations.some((o) => o.operation.phase === phase);
  return [
    ...(has("brakes")
      ? [
          plainStep({
            id: "close/pedal",
            kind: "close",
            label: "Pump the pedal until it is hard; look for leaks",
            cautions: [9],
          }),
        ]
      : []),
    ...(has("alignment") || operations.some((o) => o.operation.needsAlignment)
      ? [
          plainStep({
            id: "after/alignment",
            kind: "after",
            label: "Settle, measure heights, align: rear first, then front; steering wheel straight",
          }),
        ]
      : []),
    plainStep({
      id: "after/road-test",
      kind: "after",
      label: "Road test on the same stretch, by somebody else than the fitter where it can be",
      cautions: [18],
    }),
  ];
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
