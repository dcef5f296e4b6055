import type { Stage, VisitDocument } from "./documents.ts";

export const stageOrder: readonly Stage[] = [
  "enquiry",
  "car",
  "readings",
  "underside",
  "findings",
  "options",
  "plan",
  "job-card",
  "hand-over",
];

export const stageWords: Readonly<Record<Stage, string>> = {
  enquiry: "Enquiry",
  car: "Car",
  readings: "Readings",
  underside: "Underside",
  findings: "Findings",
  options: "Options",
  plan: "Plan",
  "job-card": "Job card",
  "hand-over": "Hand-over",
};

/** Options come with a later release: the step is on the line and never blocks. */
const WITHOUT_PAGE: readonly Stage[] = ["options"];

export interface StageMark {
  readonly stage: Stage;
  readonly mark: "not-begun" | "open" | "done" | "blocked";
  /** What blocks it, in words; empty where nothing does. */
  readonly blockedBy: string;
}

/** What a visit holds so far, as far as the job line asks for it. */
export interface VisitProgress {
  readonly visit: VisitDocument;
  readonly hasWords: boolean;
  readonly hasFamily: boolean;
  readonly readings: number;
  readonly looks: number;
  readonly places: number;
  readonly findings: number;
  readonly agreed: number;
  readonly stepsDone: number;
  readonly steps: number;
  /** Hand-over checks that still hold the car. */
  readonly gatesOpen: number;
}

/** Marks of the job line: a stage is done when somebody said so, open when something is in it, blocked when an earlier one is missing. */
export function computeStageMarks(p: VisitProgress): readonly StageMark[] {
  const done = (s: Stage): boolean => p.visit.done.includes(s);
  const begun: Readonly<Record<Stage, boolean>> = {
    enquiry: p.hasWords,
    car: p.hasFamily,
    readings: p.readings > 0,
    underside: p.looks > 0,
    findings: p.findings > 0,
    options: false,
    plan: p.agreed > 0,
    "job-card": p.stepsDone > 0,
    "hand-over": p.visit.closed,
  };
  const blocked: Readonly<Record<Stage, string>> = {
    enquiry: "",
    car: "",
    readings: p.hasFamily ? "" : "needs Car",
    underside: p.hasFamily ? "" : "needs Car",
    findings: p.hasFamily ? (p.looks + p.readings > 0 ? "" : "needs Underside") : "needs Car",
    options: "",
    plan: p.findings > 0 ? "" : "needs Findings",
    "job-card": p.agreed > 0 ? "" : "needs Plan",
    "hand-over":
      p.agreed > 0 && p.stepsDone < p.steps ? "needs Job card" : p.agreed === 0 && p.findings > 0 ? "needs Plan" : "",
  };
  return stageOrder.map((stage) => {
    if (done(stage)) return { stage, mark: "done", blockedBy: "" };
    if (WITHOUT_PAGE.includes(stage)) return { stage, mark: "not-begun", blockedBy: "" };
    if (blocked[stage] !== "") return { stage, mark: "blocked", blockedBy: blocked[stage] };
    return { stage, mark: begun[stage] ? "open" : "not-begun", blockedBy: "" };
  });
}
