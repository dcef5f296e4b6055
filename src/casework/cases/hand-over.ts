import type { Operation } from "#vehicle";
import type { HandOverDocument } from "./documents.ts";
import type { JobCard } from "./job-card.ts";
import type { PlaceFinding } from "./place-finding.ts";
import type { CarRemedy } from "./remedies.ts";

/** A check that holds the car until it is met, or passed over by somebody with a reason. */
export interface Gate {
  readonly id: string;
  readonly label: string;
  readonly state: "met" | "open" | "passed-over";
  readonly why: string;
}

export type ReteachNeed = "needed" | "not needed" | "unknown: look up";

/** What may have to be re-taught or re-aimed, and why; never silence. */
export interface ReteachItem {
  readonly item: string;
  readonly need: ReteachNeed;
  readonly why: string;
  readonly state: HandOverDocument["taught"][number]["state"] | null;
}

type Loosened = Operation["loosens"][number];

/** Which work asks for what (source key reteach in docs/sources.md, from memory): many makers differ, so most of it is to be looked up. */
const RETEACH: readonly {
  readonly item: string;
  readonly needed: readonly Loosened[];
  readonly lookUp: readonly Loosened[];
}[] = [
  { item: "Steering-angle zero", needed: ["front-toe", "rear-toe", "subframe", "rack"], lookUp: [] },
  { item: "Level sensors", needed: ["sensor-link", "height", "subframe"], lookUp: [] },
  { item: "Headlamp aim", needed: ["sensor-link", "height", "subframe"], lookUp: [] },
  { item: "Front camera", needed: ["height", "subframe"], lookUp: ["front-toe", "rear-toe", "sensor-link", "rack"] },
  { item: "Front radar", needed: ["height", "subframe"], lookUp: ["front-toe", "rear-toe"] },
  { item: "Tyre pressure monitor", needed: [], lookUp: ["wheel"] },
];

export function deriveReteach(
  remedies: readonly CarRemedy[],
  document: HandOverDocument | null,
): readonly ReteachItem[] {
  const loosened = new Set<Loosened>(remedies.flatMap((r) => r.operations.flatMap((o) => o.operation.loosens)));
  const words = (list: readonly Loosened[]): string =>
    list
      .filter((l) => loosened.has(l))
      .map((l) => l.replaceAll("-", " "))
      .join(", ");
  return RETEACH.map(({ item, needed, lookUp }) => {
    const state = document?.taught.find((t) => t.item === item)?.state ?? null;
    if (needed.some((l) => loosened.has(l))) return { item, need: "needed", why: `loosened: ${words(needed)}`, state };
    if (lookUp.some((l) => loosened.has(l)))
      return { item, need: "unknown: look up", why: `loosened: ${words(lookUp)}; makers differ`, state };
    return { item, need: "not needed", why: "nothing loosened that it hangs on", state };
  });
}

export interface HandOverFacts {
  readonly jobCard: JobCard;
  readonly remedies: readonly CarRemedy[];
  readonly findings: readonly PlaceFinding[];
  readonly reteach: readonly ReteachItem[];
  /** Places with a reading of alignment taken after the work. */
  readonly alignedAfter: boolean;
  /** Heights and angles read after the work that lie beyond a limit on file, in words. */
  readonly beyondAsLeft: readonly string[];
  readonly document: HandOverDocument | null;
}

/** Every check of the hand-over; the car is held while one is open. */
export function deriveGates(facts: HandOverFacts): readonly Gate[] {
  const { jobCard, remedies, document } = facts;
  const gate = (id: string, label: string, met: boolean, why: string): Gate => {
    const over = document?.overrides.find((o) => o.gate === id);
    return {
      id,
      label,
      state: met ? "met" : over ? "passed-over" : "open",
      why: met ? "" : over ? `${over.reason}, ${over.by}` : why,
    };
  };
  const missing = jobCard.steps.filter((s) => !s.record);
  const torque = jobCard.steps.filter((s) => s.needsRideHeight && s.record && s.record.hubToArch === null);
  const brakes = remedies.some((r) => r.operations.some((o) => o.operation.phase === "brakes"));
  const roadTest = jobCard.steps.find((s) => s.id === "after/road-test");
  const forbidden = facts.findings.filter(
    (f) => f.grade === 4 && !remedies.some((r) => r.findings.some((x) => x.place === f.place)),
  );
  const needsAlignment = remedies.some((r) => r.operations.some((o) => o.operation.needsAlignment));
  const gates: Gate[] = [
    gate(
      "steps",
      "Every step of the job card is signed",
      missing.length === 0,
      `${missing.length} of ${jobCard.steps.length} open`,
    ),
    gate(
      "loaded-torque",
      "Rubber bushes were tightened at ride height",
      torque.length === 0,
      `${torque.length} without a height`,
    ),
    gate(
      "do-not-drive",
      "Nothing is left that forbids driving",
      forbidden.length === 0,
      forbidden.map((f) => f.label).join(", "),
    ),
    gate(
      "reteach",
      "What must be re-taught is done or looked up",
      facts.reteach.every((r) => r.need === "not needed" || r.state !== null),
      facts.reteach
        .filter((r) => r.need !== "not needed" && r.state === null)
        .map((r) => r.item)
        .join(", "),
    ),
  ];
  if (brakes)
    gates.push(
      gate(
        "pedal",
        "The pedal was hard before the car moved",
        jobCard.steps.some((s) => s.id === "close/pedal" && s.record),
        "not signed",
      ),
    );
  if (roadTest) gates.push(gate("road-test", "Road test done", roadTest.record !== null, "not signed"));
  if (needsAlignment)
    gates.push(gate("alignment", "Alignment measured after the work", facts.alignedAfter, "no reading after the work"));
  if (needsAlignment || facts.beyondAsLeft.length > 0)
    gates.push(
      gate(
        "as-left",
        "Heights and alignment as left are within what is on file",
        facts.beyondAsLeft.length === 0,
        facts.beyondAsLeft.join("; "),
      ),
    );
  return gates;
}
