import { describe, expect, it } from "vitest";
import { sampleEffect } from "../../../test/samples/sample-effect.ts";
import { sampleFamily } from "../../../test/samples/sample-family.ts";
import type { Scene } from "../scene.ts";
import { flatMarks, textBox, textsOf } from "../scene-checks.ts";
import { drawTurnedCorner } from "./draw-turned-corner.ts";

const room = { width: 420, height: 480 };
const draw = (turn: number, tilt: number): Scene =>
  drawTurnedCorner(sampleFamily, "rear-left", sampleEffect.sound, 0, { ...room, eye: { turn, tilt } });

/** Every point of every path and circle. */
const spotsOf = (scene: Scene): readonly (readonly [number, number])[] =>
  flatMarks(scene.marks).flatMap((mark) => {
    if (mark.kind === "circle") return [[mark.cx, mark.cy] as const];
    if (mark.kind !== "path") return [];
    const numbers = (mark.d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    return /[AHV]/i.test(mark.d)
      ? []
      : numbers.flatMap((x, i) => (i % 2 === 0 ? [[x, numbers[i + 1] ?? 0] as const] : []));
  });

describe("a corner in space", () => {
  it.each([-180, -135, -60, 0, 35, 90, 150])("stays in its frame, walked round to %s degrees", (turn) => {
    for (const tilt of [-30, 0, 20, 60, 90]) {
      const scene = draw(turn, tilt);
      const outside = spotsOf(scene).filter(
        ([x, y]) => x < 0 || y < 0 || x > scene.width || y > scene.height || Number.isNaN(x + y),
      );
      expect(outside, `tilt ${tilt}`).toEqual([]);
      for (const text of textsOf(scene)) {
        const box = textBox(text);
        expect(box.x >= 0 && box.x + box.width <= scene.width).toBe(true);
      }
    }
  });

  it("has the ground as a line from eye level and the wheel as a circle from the left", () => {
    const level = draw(0, 0);
    const ground = flatMarks(level.marks).filter((mark) => mark.kind === "path" && mark.stroke?.colour === "hair");
    expect(ground.length).toBeGreaterThan(5);
    const wheel = (scene: Scene) => {
      const outlines = flatMarks(scene.marks).flatMap((mark) =>
        mark.kind === "path" && mark.d.split("L").length === 72 ? [mark.d] : [],
      );
      const numbers = (outlines[0]?.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
      const side = (k: number) => numbers.filter((_, i) => i % 2 === k);
      return [0, 1].map((k) => Math.max(...side(k)) - Math.min(...side(k)));
    };
    const [wide = 0, high = 1] = wheel(draw(90, 0));
    expect(wide / high).toBeCloseTo(1, 2);
    const [narrow = 1, tall = 0] = wheel(level);
    expect(narrow).toBeLessThan(0.1 * tall);
  });

  it("says from where it is seen", () => {
    expect(textsOf(draw(0, 0))[0]?.text).toBe("From behind");
    expect(textsOf(draw(90, 20))[0]?.text).toBe("From the left, a little from above");
    expect(textsOf(draw(-90, -20))[0]?.text).toBe("From the right, from below");
    expect(textsOf(draw(180, 80))[0]?.text).toBe("From the front, nearly from above");
  });

  it("draws another state thin over it, its wheel where this one is at design", () => {
    const options = { ...room, eye: { turn: 35, tilt: 20 } };
    const far = { ...sampleFamily, rear: { ...sampleFamily.rear } };
    const plain = drawTurnedCorner(sampleFamily, "rear-left", sampleEffect.sound, 0, options);
    const beside = [{ family: far, pose: sampleEffect.sound, rack: 0 }];
    const both = drawTurnedCorner(sampleFamily, "rear-left", sampleEffect.sound, 0, { ...options, beside });
    const added = flatMarks(both.marks).length - flatMarks(plain.marks).length;
    expect(added).toBeGreaterThan(0);
    const paths = (scene: Scene) => flatMarks(scene.marks).flatMap((mark) => (mark.kind === "path" ? [mark.d] : []));
    // The same pose lies exactly over the wheel that is there.
    const wheels = (scene: Scene) => paths(scene).filter((d) => d.split("L").length === 72);
    const twice = wheels(both).filter((d, i, all) => all.indexOf(d) !== i);
    expect(wheels(plain).filter((d, i, all) => all.indexOf(d) !== i)).toEqual([]);
    expect(twice.length).toBeGreaterThan(0);
  });
});
