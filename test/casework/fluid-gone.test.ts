import { describe, expect, it } from "vitest";
import {
  computeShake,
  doesWords,
  effectWords,
  formatFigure,
  type SignName,
  signsFor,
  type VisitRecord,
} from "#casework";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { type Family, workOf } from "#vehicle";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { look, record, solver } from "./made-visit.ts";

const parsed = parseFamily(demoFamilySheets["siskin-coupe"]);
if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
const coupe = parsed.family;
const place = "front-right/tension-link/inner-bush";

const appraise = (signs: readonly SignName[], change: Partial<VisitRecord> = {}) =>
  appraiseVisit(
    record([look(place, { kind: "signs", signs })], { family: coupe, work: workOf(coupe), ...change }),
    solver,
  );
const findingOf = (appraisal: ReturnType<typeof appraise>) => {
  const found = appraisal.findings.find((f) => f.place === place);
  if (!found) throw new Error("no finding");
  return found;
};

describe("a hydraulic bush that has lost its fluid, in a visit", () => {
  const asked = computeShake(coupe, { corner: "front-right", position: place });
  if ("findings" in asked) throw new Error("no shake");

  it.each(["oil-trace", "fluid-gone"] as const)("is told by its shake and not as torn: %s", (sign) => {
    const finding = findingOf(appraise([sign]));
    expect(finding.grade).toBe(2);
    expect(finding.effect).toBeNull();
    expect(finding.shake?.sentence).toBe(asked.shake.sentence);
    expect(doesWords(finding)).toBe(asked.shake.sentence);
    expect(effectWords([finding])).toBe(`shake ${formatFigure(asked.shake.headline)} as far under light braking`);
  });

  it("is to be repaired first where the owner feels it at that axle, and says so; a complaint of another kind changes nothing", () => {
    const cameWith = (
      symptom: string,
      axle: "front" | "rear" | "unknown",
      speedKmh: readonly [number, number] | null = null,
    ): Partial<VisitRecord> => ({
      enquiry: {
        words: "",
        symptoms: [
          {
            symptom,
            side: "unknown",
            axle,
            conditions: { speedKmh, temperature: null, load: null, steering: null, braking: null },
            since: null,
          },
        ],
        use: null,
      },
    });
    const graded = (symptom: string, axle: "front" | "rear" | "unknown") =>
      findingOf(appraise(["oil-trace"], cameWith(symptom, axle)));
    const felt = graded("steering-wheel-shakes-under-braking", "unknown");
    expect(felt.grade).toBe(3);
    expect(felt.reasons[0]?.text).toBe("fluid lost, and the owner feels it: steering wheel shakes under braking");
    expect(felt.found).toBe("oil trace");
    expect(felt.shake?.sentence).toBe(asked.shake.sentence);
    const at = appraise(["oil-trace"], cameWith("steering-wheel-shakes-under-braking", "unknown", [100, 120]));
    expect(findingOf(at).shake?.sentence).toContain("At 110 km/h, where it is felt, it is ");
    expect(graded("pulls-under-braking", "front").grade).toBe(3);
    expect(graded("pulls-under-braking", "rear").grade).toBe(2);
    expect(graded("spongy-pedal", "unknown").grade).toBe(2);
  });

  it("stands on the job card on both sides: opened, renewed with new fasteners, torqued at ride height, closed", () => {
    const first = appraise(["fluid-gone"]);
    const remedy = first.plan.remedies.find(({ remedy: { findings } }) =>
      findings.some((f) => f.place === place),
    )?.remedy;
    if (remedy === undefined) throw new Error("no remedy");
    const { jobCard } = appraise(["fluid-gone"], {
      plan: {
        ...first.planDocument,
        agreed: [{ remedy: remedy.id, by: "owner", at: "2026-03-12T10:00:00Z" }],
        fixed: [{ remedy: remedy.id, visit: 0 }],
      },
    });
    const stepsOf = (part: string) => jobCard.steps.filter(({ id }) => id.includes(part));
    const at = (id: string): number => jobCard.steps.findIndex((step) => step.id === id);
    for (const side of ["left", "right"]) {
      const renew = at(`renew-front-tension-link@front-${side}`);
      const torque = at(`torque/renew-front-tension-link@front-${side}`);
      expect(at(`access/wheel-off@front-${side}`)).toBeGreaterThan(-1);
      expect(renew).toBeGreaterThan(at(`access/wheel-off@front-${side}`));
      expect(at("close/wheels")).toBeGreaterThan(renew);
      expect(torque).toBeGreaterThan(at("close/wheels"));
      expect(jobCard.steps[torque]?.needsRideHeight).toBe(true);
      expect(jobCard.steps[torque]?.fasteners[0]?.stages).toHaveLength(2);
      expect(jobCard.steps[renew]?.cautions).toContain(1);
    }
    expect(stepsOf("undertray").map(({ kind }) => kind)).toEqual(["access", "close"]);
    expect(jobCard.hardware.map(({ must }) => must)).toEqual([2, 2]);
    expect(jobCard.steps.at(-1)?.kind).toBe("after");
    expect(stepsOf("alignment")).toHaveLength(1);
  });

  it("is told by both where its web is torn too", () => {
    const finding = findingOf(appraise(["oil-trace", "web-torn"]));
    expect(finding.effect?.question.fault).toEqual({ kind: "torn", grade: 3 });
    expect(doesWords(finding)).toBe(`${asked.shake.sentence} ${finding.effect?.sentence}`);
  });

  it("stands in the plan with its remedy, its price and how long such bushes last", () => {
    const { plan } = appraise(["fluid-gone"]);
    const planned = plan.remedies.find(({ remedy }) => remedy.findings.some((f) => f.place === place));
    expect(planned?.price?.total).toBeGreaterThan(0);
    expect(planned?.remaining).not.toBeNull();
  });

  it("says what it would take where the fluid is not on file", () => {
    const fluidless: Family = {
      ...coupe,
      front: {
        ...coupe.front,
        links: coupe.front.links.map((link) => {
          const { fluid: _, ...innerJoint } = link.innerJoint;
          return { ...link, innerJoint };
        }),
      },
    };
    const finding = findingOf(appraise(["oil-trace"], { family: fluidless }));
    expect(finding.shake).toBeNull();
    expect(finding.noShake).toContain("the fluid of this bush");
    expect(doesWords(finding)).toBe(finding.noShake);
    expect(effectWords([finding])).toBe("");
  });

  it("has no oil to lose where the bush is plain: an older record of it still counts", () => {
    expect(signsFor("bush")).not.toContain("oil-trace");
    expect(signsFor("hydraulic-bush")).toEqual(expect.arrayContaining(["oil-trace", "fluid-gone"]));
    const plain = "rear-left/toe-link/inner-bush";
    const found = appraiseVisit(record([look(plain, { kind: "signs", signs: ["oil-trace"] })]), solver).findings.find(
      (f) => f.place === plain,
    );
    expect([found?.grade, found?.found, found?.shake, found?.effect]).toEqual([1, "oil trace", null, null]);
  });
});
