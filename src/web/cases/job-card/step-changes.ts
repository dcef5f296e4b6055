import type { JobCardDocument, StepRecord } from "#casework";

/** Signs a step; a step signed before keeps its place and takes what is new. */
export const signStep = (card: JobCardDocument | null, record: StepRecord): JobCardDocument => {
  const steps = card?.steps ?? [];
  return steps.some((s) => s.step === record.step)
    ? { steps: steps.map((s) => (s.step === record.step ? record : s)) }
    : { steps: [...steps, record] };
};

/** Takes a signature back; every version before stays on record. */
export const unsignStep = (card: JobCardDocument | null, step: string): JobCardDocument => ({
  steps: (card?.steps ?? []).filter((s) => s.step !== step),
});
