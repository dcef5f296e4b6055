import { readFileSync } from "node:fs";
import { beforeAll, describe, it } from "vitest";
import { lookAtSheet } from "./look-at-sheet.ts";
import { ask, putCarAndVisit, putLooks, putNew } from "./recorded-visit.ts";

const ID = "seen-visit";
const EMPTY = "seen-empty";
const example = JSON.parse(readFileSync(new URL("../../docs/examples/visit.json", import.meta.url), "utf8"));
const TORN = "rear-left/trailing-link/inner-bush";

/** Pages of the second half of a visit by the name of their pictures. */
const PAGES = [
  { name: "visit-findings", path: `${ID}/findings` },
  { name: "visit-finding", path: `${ID}/findings?at=${TORN}` },
  { name: "visit-suspect", path: `${ID}/findings?suspect=caliper-guide-seized` },
  { name: "visit-findings-none", path: `${EMPTY}/findings` },
  { name: "visit-plan", path: `${ID}/plan` },
  { name: "visit-plan-remedy", path: `${ID}/plan?remedy=rear-trailing-bush@rear` },
  { name: "visit-plan-none", path: `${EMPTY}/plan` },
  { name: "visit-job-card", path: `${ID}/job-card` },
  { name: "visit-job-step", path: `${ID}/job-card?step=final-torque` },
  { name: "visit-job-card-none", path: `${EMPTY}/job-card` },
  { name: "visit-hand-over", path: `${ID}/hand-over` },
] as const;

interface Appraised {
  readonly plan: { readonly remedies: readonly { readonly remedy: string; readonly grade: number }[] };
  readonly job_card: { readonly steps: readonly { readonly step: string; readonly needs_ride_height: boolean }[] };
}

describe("the sheets of the second half of a visit", () => {
  /** Id of the first step that asks for the ride height. */
  let finalTorque = "";
  beforeAll(async () => {
    await putCarAndVisit(EMPTY, example.family.id);
    await putCarAndVisit(ID, example.family.id);
    await putNew("enquiry", ID, example.enquiry);
    await putLooks(ID, ID, 11, example.looks);
    const { plan } = (await ask(`/api/visits/${ID}/appraisal`)) as Appraised;
    const at = "2026-03-12T10:00:00Z";
    await putNew("plan", ID, {
      visits: [
        { label: "Now", odometer_km: 128_440 },
        { label: "Next service", odometer_km: 143_440 },
        { label: "Second service", odometer_km: 158_440 },
      ],
      declined: [],
      agreed: plan.remedies.filter((r) => r.grade >= 2).map(({ remedy }) => ({ remedy, by: "owner", at })),
      fixed: [],
      horizon_km: 165_940,
    });
    const step = { done_by: "I. Marden", at, hub_to_arch_mm: null, torque_nm: null, note: null };
    const { job_card } = (await ask(`/api/visits/${ID}/appraisal`)) as Appraised;
    finalTorque = job_card.steps.find((s) => s.needs_ride_height)?.step ?? "";
    await putNew("job-card", ID, {
      steps: [
        { ...step, step: "before/heights" },
        { ...step, step: "before/lift" },
      ],
    });
  });

  it.each(PAGES)(
    "$name: its pictures in every size and both themes, nothing for axe to find, no complaint",
    ({ name, path }) =>
      lookAtSheet({
        name,
        path: `/cases/${path.replace("final-torque", finalTorque)}`,
        pressed: [".head", ".drawing", ".margin"],
      }),
  );
});
