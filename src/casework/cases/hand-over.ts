import type { CarAsLeft } from "../readings/judge-as-left.ts";
import type { HandOverDocument } from "./documents.ts";
import type { JobCard } from "./job-card.ts";
import { heightsApart } from "./loaded-heights.ts";
import type { StoredLook } from "./look.ts";
import type { PlaceFinding } from "./place-finding.ts";
import type { CarRemedy } from "./remedies.ts";
import type { ReteachItem } from "./reteach.ts";
import { standardReadings } from "./standard-readings.ts";

/** How a check stands. "open" holds the car; nothing else does. */
export type GateState = "met" | "open" | "passed-over" | "does-not-apply" | "not-on-file";

/** A check that holds the car until it is met, or passed over by somebody with a reason. */
export interface Gate {
  readonly id: string;
  readonly label: string;
  readonly state: GateState;
  readonly why: string;
}

export interface HandOverFacts {
  readonly jobCard: JobCard;
  /** Agreed to and done at this visit. */
  readonly remedies: readonly CarRemedy[];
  /** Planned for this visit, neither agreed to nor declined. */
  readonly undecided: readonly CarRemedy[];
  readonly findings: readonly PlaceFinding[];
  /** Findings no remedy on file cures. */
  readonly uncured: readonly PlaceFinding[];
  readonly reteach: readonly ReteachItem[];
  /** Looks that count, taken after the last signed work. */
  readonly readAfterWork: readonly StoredLook[];
  readonly left: CarAsLeft;
  readonly document: HandOverDocument | null;
}

/** How a check stands before somebody passes it over, and why. */
type Standing = readonly [state: Exclude<GateState, "passed-over">, why: string];

const metUnless = (open: boolean, why: string): Standing => (open ? ["open", why] : ["met", ""]);
const named = (list: readonly { readonly label: string }[]): string => list.map((l) => l.label).join(", ");

/** Every check of the hand-over; the car is held while one is open. */
export function deriveGates(facts: HandOverFacts): readonly Gate[] {
  const { jobCard, remedies, document } = facts;
  const gate = (id: string, label: string, [state, why]: Standing): Gate => {
    const over = state === "open" ? document?.overrides.find((o) => o.gate === id) : undefined;
    return over ? { id, label, state: "passed-over", why: `${over.reason}, ${over.by}` } : { id, label, state, why };
  };
  const isSigned = (id: string): boolean => jobCard.steps.some((s) => s.id === id && s.record);
  const forbidden = facts.findings.filter(
    (f) => f.grade === 4 && !remedies.some((r) => r.findings.some((x) => x.place === f.place)),
  );
  const isLookedAt = facts.findings.some(({ grade }) => grade !== null);
  const untaught = facts.reteach.filter((r) => r.need !== "not needed" && r.state === null);
  const needsAlignment = remedies.some((r) => r.operations.some((o) => o.operation.needsAlignment));
  const gates: Gate[] = [
    gate("steps", "Every step of the job card is signed", steps(facts)),
    gate("loaded-torque", "Rubber bushes were tightened at ride height", loadedTorque(facts)),
    isLookedAt
      ? gate("do-not-drive", "Nothing is left that forbids driving", metUnless(forbidden.length > 0, named(forbidden)))
      : gate("do-not-drive", "Somebody looked for what forbids driving", ["open", "nothing on this car was looked at"]),
    gate(
      "reteach",
      "What must be re-taught is done or looked up",
      facts.reteach.every((r) => r.need === "not needed")
        ? ["does-not-apply", "nothing was loosened that asks for it"]
        : metUnless(untaught.length > 0, untaught.map((r) => r.item).join(", ")),
    ),
  ];
  const first = facts.undecided.filter((r) => r.grade >= 3);
  const urgent = [...first, ...facts.uncured.filter((f) => f.grade === 3)];
  if (urgent.length > 0)
    gates.push(gate("repair-first", "What is to be repaired first is agreed to or declined", ["open", named(urgent)]));
  if (remedies.some((r) => r.operations.some((o) => o.operation.phase === "brakes")))
    gates.push(
      gate("pedal", "The pedal was hard before the car moved", metUnless(!isSigned("close/pedal"), "not signed")),
    );
  if (jobCard.steps.some((s) => s.id === "after/road-test"))
    gates.push(gate("road-test", "Road test done", metUnless(!isSigned("after/road-test"), "not signed")));
  if (needsAlignment) gates.push(gate("alignment", "Alignment measured after the work", aligned(facts)));
  if (needsAlignment || facts.left.beyond.length > 0)
    gates.push(gate("as-left", "Heights and alignment as left are within what is on file", asLeft(facts)));
  return gates;
}

function steps({ jobCard, undecided, uncured }: HandOverFacts): Standing {
  if (jobCard.steps.length === 0) {
    const asking = [...undecided, ...uncured.filter((f) => (f.grade ?? 0) >= 3)];
    if (asking.length === 0) return ["does-not-apply", "nothing is to be done at this visit"];
    return ["open", `no step yet, and this asks for work now: ${named(asking)}`];
  }
  const missing = jobCard.steps.filter((s) => !s.record);
  return metUnless(missing.length > 0, `${missing.length} of ${jobCard.steps.length} open`);
}

function loadedTorque({ jobCard, left }: HandOverFacts): Standing {
  const loaded = jobCard.steps.filter((s) => s.needsRideHeight);
  if (loaded.length === 0) return ["does-not-apply", "no such step on the job card"];
  const open = loaded.filter((s) => s.record === null || s.record.hubToArch === null);
  if (open.length > 0) return ["open", `${open.length} of ${loaded.length} not signed with a height`];
  const apart = heightsApart(loaded, left.readings);
  return metUnless(apart.length > 0, apart.join("; "));
}

/** Single toe of all four wheels, and whatever else of the alignment was read before the work. */
function aligned({ left, readAfterWork }: HandOverFacts): Standing {
  const before = left.readings.filter((r) => r.group === "alignment" && r.asFound !== null);
  const asked = standardReadings().filter(
    (s) =>
      s.group === "alignment" &&
      (s.quantity === "toe" || before.some((r) => r.place === s.place && r.quantity === s.quantity)),
  );
  const missing = asked.filter(
    ({ place, quantity }) =>
      !readAfterWork.some(
        ({ place: at, content }) => at === place && content.kind === "reading" && content.quantity === quantity,
      ),
  );
  return metUnless(missing.length > 0, `not read after the last signed work: ${named(missing)}`);
}

function asLeft({ left }: HandOverFacts): Standing {
  if (left.beyond.length > 0) return ["open", left.beyond.join("; ")];
  const taken = left.readings.filter((r) => r.asLeft !== null);
  if (taken.length === 0) return ["open", "nothing was read after the work"];
  const held = taken.filter((r) => r.leftDecision !== null);
  if (held.length === 0) return ["not-on-file", "nothing on file to hold it against"];
  const rest = taken.length - held.length;
  return ["met", rest === 0 ? "" : `${rest} of ${taken.length} readings have nothing on file to be held against`];
}
