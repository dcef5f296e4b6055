import { computeFaultEffect, type Figure, type RubberFault } from "#casework";
import { type Family, positionsOf } from "#vehicle";
import { rearAxleInTwoForms } from "../../family-sheets/rear-axle-in-two-forms.ts";
import { absolute, Score } from "../score.ts";

const exact = absolute(1e-9);
const CONDITION = { contactRise: 0.01, rack: 0, braking: 2000, lateral: 0, drive: 0 };
const FAULTS: readonly RubberFault[] = [
  { kind: "torn", grade: 3 },
  { kind: "firmer", factor: 2 },
  { kind: "loose", play: 0.001 },
];

/** Figures of one faulty joint at the inner end of a rear link of a car line. */
function figuresOf(family: Family, link: string, fault: RubberFault): readonly Figure[] {
  const position = positionsOf(family).find(
    ({ axle, side, joint }) => axle === "rear" && side === "left" && joint?.link === link && joint.end === "inner",
  );
  const answer = computeFaultEffect(family, {
    corner: "rear-left",
    position: position?.id ?? "",
    fault,
    condition: CONDITION,
  });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.effect.figures;
}

/** What every rubber joint of a rear axle does when it is torn, firmer or loose: the built-in layout against the same as bodies. */
export function scoreSameAxle(): Score {
  const score = new Score("rear axle of a car line as bodies against the built-in layout", "same axle in two forms");
  const { own, bodies } = rearAxleInTwoForms();
  for (const { name, innerJoint } of own.rear.links) {
    if (innerJoint.radial === undefined) continue;
    for (const fault of FAULTS) {
      const got = figuresOf(bodies, name, fault);
      figuresOf(own, name, fault).forEach((figure, i) => {
        const same = got[i]?.key === figure.key ? got[i] : null;
        score.compare(`figures, ${fault.kind} under braking`, same?.value, figure.value, exact);
        score.compare(`their standard uncertainties, ${fault.kind}`, same?.u, figure.u, exact);
      });
    }
  }
  return score;
}
