import { describe, expect, it } from "vitest";
import { computeFaultEffect, type FaultEffect, formatFigure, type RubberFault } from "#casework";
import { drawCurves, drawGeometry, type TypeScale } from "#drawing";
import { type Corner, type Family, familyFromSilhouette, type LayoutName } from "#vehicle";
import { crowdedTexts, flatMarks } from "../../src/drawing/scene-checks.ts";

const familyOf = (frontLayout: LayoutName, rearLayout: LayoutName): Family => {
  const made = familyFromSilhouette({ frontLayout, rearLayout, drivenAxle: "both" });
  if ("findings" in made) throw new Error("the silhouette of the test is wrong");
  return made.family;
};
const strutCar = familyOf("strut", "trailing-arm");
const wishboneCar = familyOf("double-wishbone", "five-link");
const linkCar = familyOf("five-link", "five-link");

const effectOf = (family: Family, position: string, fault: RubberFault, braking = 2000): FaultEffect => {
  const corner = position.slice(0, position.indexOf("/")) as Corner;
  const condition = { contactRise: 0, rack: 0, braking, lateral: 0, drive: 0 };
  const answer = computeFaultEffect(family, { corner, position, fault, condition });
  if ("findings" in answer) throw new Error(`${position}: ${JSON.stringify(answer.findings)}`);
  return answer.effect;
};

const torn: RubberFault = { kind: "torn", grade: 3 };
const ASKED: readonly (readonly [Family, string, RubberFault])[] = [
  [strutCar, "front-left/strut/top-mount", torn],
  [strutCar, "front-right/lower-arm/rear-bush", torn],
  [strutCar, "rear-left/trailing-arm/front-bush", torn],
  [wishboneCar, "front-right/upper-arm/front-bush", { kind: "firmer", factor: 3 }],
  [wishboneCar, "rear-right/trailing-link/inner-bush", { kind: "loose", play: 0.001 }],
  [linkCar, "front-left/lower-front-link/inner-bush", torn],
];
const effects = ASKED.map(([family, position, fault]) => ({ family, effect: effectOf(family, position, fault) }));

const ROOMS: readonly { readonly width: number; readonly height: number; readonly type: TypeScale }[] = [
  { width: 640, height: 760, type: "desk" },
  { width: 460, height: 560, type: "desk" },
  { width: 430, height: 700, type: "touch" },
  { width: 380, height: 620, type: "touch" },
];

describe("words of the drawings of a fault", { timeout: 120_000 }, () => {
  it("stay inside the three views and clear of each other", () => {
    for (const { family, effect } of effects) {
      for (const room of ROOMS) {
        const scene = drawGeometry(family, effect, {
          ...room,
          format: formatFigure,
          ghosts: effect.travels,
          eye: { turn: 35, tilt: 20 },
        });
        expect(crowdedTexts(scene), `${effect.question.position} ${room.width}`).toEqual([]);
      }
    }
  });

  it("stay inside the curves and clear of each other", () => {
    for (const { effect } of effects) {
      for (const room of [...ROOMS, { width: 320, height: 480, type: "touch" } as const]) {
        const scene = drawCurves(effect, { ...room, format: formatFigure });
        expect(crowdedTexts(scene), `${effect.question.position} ${room.width}`).toEqual([]);
      }
    }
  });

  it("stay so when a band reaches tens of degrees, which is cut and said", () => {
    for (const { effect } of effects) {
      const curves = effect.curves.map((curve) => ({
        ...curve,
        drawable: true,
        lines: curve.lines.map((line) => ({
          ...line,
          low: line.values.map((value) => value - 31),
          high: line.values.map((value) => value + 27),
        })),
      }));
      const scene = drawCurves({ ...effect, curves }, { width: 420, height: 600, format: formatFigure });
      expect(crowdedTexts(scene)).toEqual([]);
      const said = flatMarks(scene.marks).flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
      expect(said.join(" ")).toMatch(/band runs on to −3[0-9]° and 2[0-9]°/);
    }
  });

  it("keep the toe lines inside the view from above, the factor written, however far the wheel turns", () => {
    for (const toe of [0.2, 1.2, 3, 9]) {
      const [first] = effects;
      if (first === undefined) throw new Error("no effect");
      const lean = (degrees: number) => (degrees * Math.PI) / 180;
      const sound = { ...first.effect.sound, toe: 0 };
      const faulty = { ...first.effect.faulty, toe: lean(toe) };
      const scene = drawGeometry(
        first.family,
        { ...first.effect, sound, faulty },
        { width: 640, height: 760, format: formatFigure, eye: { turn: 35, tilt: 20 } },
      );
      const lines = flatMarks(scene.marks).flatMap((mark) =>
        mark.kind === "path" && mark.stroke?.dash?.join() === "14,3,2,3" ? [mark.d] : [],
      );
      const xs = lines.flatMap((d) =>
        d
          .slice(1)
          .split("L")
          .map((pair) => Number(pair.split(" ")[0])),
      );
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(24);
      expect(Math.max(...xs)).toBeLessThan(320);
      const said = flatMarks(scene.marks).flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
      expect(said.join(" ")).toMatch(/drawn [0-9]+ times/);
    }
  });
});
