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
