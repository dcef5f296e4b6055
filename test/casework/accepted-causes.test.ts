import { describe, expect, it } from "vitest";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import type { SuspectWord } from "../../src/casework/cases/documents.ts";
import { causes } from "../../src/casework/suspects/cause-table.ts";
import { elsewhereWords } from "../../src/casework/suspects/cause-words.ts";
import { look, record, solver } from "./made-visit.ts";

const accepted = (cause: string): SuspectWord => ({
  cause,
  word: "accepted",
  reason: null,
  by: "MK",
  at: "2031-05-14T09:00:00Z",
});
const complaint = (symptom: string) => ({
  symptom,
  side: "unknown" as const,
  axle: "unknown" as const,
  conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking: null },
  since: null,
});
const appraise = (symptom: string, cause: string, looks: Parameters<typeof record>[0] = []) =>
  appraiseVisit(
    record(looks, {
      enquiry: { words: "", symptoms: [complaint(symptom)], use: null, suspects: [accepted(cause)] },
    }),
    solver,
  );
const bush = "trailing-link/inner-bush";

describe("a cause that was accepted without a finding", () => {
  it("brings its remedy into the plan, now, and says that nothing was found", () => {
    const a = appraise("clunk-over-bumps-rear", "rear-trailing-bush");
    const planned = a.plan.remedies.find((r) => r.remedy.id === "trailing-bushes@rear");
    expect(planned).toMatchObject({ visit: 0, accepted: expect.stringContaining("Rear trailing") });
    expect(planned?.price?.total).toBeGreaterThan(0);
    expect(planned?.remedy.findings.map((f) => f.place)).toContain(`rear-left/${bush}`);
    expect(planned?.remedy.findings[0]?.found).toMatch(/taken as the cause .*nothing was found here/);
    expect(a.unplanned).toEqual([]);
    expect(a.findings.find((f) => f.place === `rear-left/${bush}`)?.grade).toBeNull();
  });

  it("looks first to places nobody has looked at", () => {
    const sound = look(`rear-left/${bush}`, { kind: "nothing-seen" });
    const a = appraise("clunk-over-bumps-rear", "rear-trailing-bush", [sound]);
    const places = a.plan.remedies.flatMap((r) => r.remedy.findings.map((f) => f.place));
    expect(places).toContain(`rear-right/${bush}`);
    expect(places).not.toContain(`rear-left/${bush}`);
  });

  it("says why where no remedy is on file, and where it is no single part", () => {
    const without = appraise("clunk-over-bumps-rear", "bar-link");
    expect(without.plan.remedies).toEqual([]);
    expect(without.unplanned).toMatchObject([
      { cause: "bar-link", why: expect.stringContaining("no remedy is on file") },
    ]);
    const nowhere = appraise("clunk-over-bumps-rear", "arm-bolt-loose");
    expect(nowhere.unplanned).toMatchObject([{ why: expect.stringContaining("no single part of the underside") }]);
  });
});

it("a cause without a place on the underside says where it is looked for", () => {
  for (const cause of causes.filter((c) => c.kinds.length === 0 || c.about !== undefined))
    expect(elsewhereWords(cause), cause.id).not.toBe("no part of this car");
});
