import type { PlanDocument, Stage, VisitDocument, Wait } from "./documents.ts";
import { formatKm } from "./format-km.ts";
import { stageOrder, stageWords } from "./stages.ts";
import { SERVICE_KM } from "./usual-plan.ts";

/** When a car is to be seen again. */
export interface DueAgain {
  readonly km: number;
  /** "plan": the next visit of its plan; "horizon": the end of its plan; "practice": an interval from memory. */
  readonly from: "plan" | "horizon" | "practice";
  readonly words: string;
}

/** What can go on while a case waits. */
export interface Meanwhile {
  /** Stages still open that wait for nothing, in the order of the job: no job card before somebody agreed, no hand-over before all else. */
  readonly goesOn: readonly Stage[];
  /** Stages still open that wait for what the case waits for. */
  readonly held: readonly Stage[];
  readonly words: string;
}

/** What Today says of a car beside where it stands. */
export interface CarToday {
  /** null: the odometer was not read, and no plan says it. */
  readonly dueAgain: DueAgain | null;
  readonly meanwhile: Meanwhile;
}

/** Stages with a page of their own. */
const withPage = stageOrder.filter((stage) => stage !== "options");

/** What each wait holds up (common practice, no source); a person holds up what is being done now, whatever it is. */
const holds: Readonly<Record<Exclude<Wait["what"], "person">, readonly Stage[]>> = {
  part: ["job-card", "hand-over"],
  owner: ["plan", "job-card", "hand-over"],
  stand: ["underside", "job-card", "hand-over"],
};

/**
 * When a car is due again, and what can go on meanwhile.
 * @param plan the plan of its last visit, where one is on file
 */
export const computeCarToday = (visit: VisitDocument, plan: PlanDocument | null): CarToday => ({
  dueAgain: dueAgainOf(visit, plan),
  meanwhile: meanwhileOf(visit, plan),
});

function dueAgainOf({ odometerKm }: VisitDocument, plan: PlanDocument | null): DueAgain | null {
  const now = odometerKm ?? plan?.visits[0]?.odometerKm ?? null;
  if (now === null) return null;
  const next = plan?.visits.slice(1).find((v) => v.odometerKm > now);
  if (next !== undefined)
    return { km: next.odometerKm, from: "plan", words: `${next.label} at ${formatKm(next.odometerKm)}, by its plan` };
  if (plan !== null && plan.horizonKm > now)
    return { km: plan.horizonKm, from: "horizon", words: `at ${formatKm(plan.horizonKm)}, where its plan ends` };
  const km = now + SERVICE_KM;
  return {
    km,
    from: "practice",
    words: `at ${formatKm(km)}, a yearly service from memory; no plan is saved yet, what is due then stands on Plan`,
  };
}

function meanwhileOf({ done, waits, closed }: VisitDocument, plan: PlanDocument | null): Meanwhile {
  const open = closed ? [] : withPage.filter((stage) => !done.includes(stage));
  const [current] = open;
  const agreed = (plan?.agreed.length ?? 0) > 0;
  const held = new Set(
    waits.flatMap(({ what }): readonly Stage[] => {
      if (what === "person") return current === undefined ? [] : [current];
      // What was agreed to can be done while the owner thinks about the rest.
      return what === "owner" && agreed ? ["plan", "hand-over"] : holds[what];
    }),
  );
  const canBegin = (stage: Stage): boolean =>
    stage === "job-card" ? agreed : stage !== "hand-over" || open.every((other) => other === "hand-over");
  const goesOn = open.filter((stage) => !held.has(stage) && canBegin(stage));
  return { goesOn, held: open.filter((stage) => held.has(stage)), words: meanwhileWords(goesOn, open, waits) };
}

function meanwhileWords(goesOn: readonly Stage[], open: readonly Stage[], waits: readonly Wait[]): string {
  const [first] = open;
  if (first === undefined) return "Nothing is left to do.";
  if (waits.length === 0) return `Waits for nothing: ${stageWords[first]} goes on.`;
  const names = goesOn.map((stage) => stageWords[stage]).join(", ");
  return names === "" ? "Nothing can go on until then." : `Can go on meanwhile: ${names}.`;
}
