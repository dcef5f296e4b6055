import { describe, expect, it } from "vitest";
import type { FaultEffect } from "#casework";
import { sampleEffect, sampleFormat, sampleGhosts } from "../../../test/samples/sample-effect.ts";
import { sampleFamily } from "../../../test/samples/sample-family.ts";
import type { CarPoint } from "../projection.ts";
import { flatMarks, textsOf } from "../scene-checks.ts";
import { drawGeometry } from "./draw-geometry.ts";
import { moveCorner } from "./moved-corner.ts";
import { alignViews, cornerReach } from "./views.ts";

const EYE = { turn: 35, tilt: 20 };
const options = { width: 640, height: 700, format: sampleFormat };

describe("moveCorner", () => {
  it("leaves every point where it is in the design pose, mirrored on the right side", () => {
    const [x, y, z] = sampleFamily.rear.wheel.centre;
    const still = { ...sampleEffect.sound, centre: [x, y, z] as const };
    const left = moveCorner(sampleFamily.rear, "left", still, 0);
    const right = moveCorner(sampleFamily.rear, "right", { ...still, centre: [x, -y, z] }, 0);
    for (const [i, link] of sampleFamily.rear.links.entries()) {
      expect(left.links[i]?.outer).toEqual(link.outer.at);
      const [ox, oy, oz] = link.outer.at;
      expect(right.links[i]?.outer).toEqual([ox, -oy, oz]);
    }
    expect(right.spin[1]).toBeCloseTo(-left.spin[1], 12);
  });

  it("carries outer joints with the knuckle and leaves inner ones in the body, but for the rack", () => {
    const quarter = { ...sampleEffect.sound, rotation: [0, -1, 0, 1, 0, 0, 0, 0, 1] };
    const moved = moveCorner(sampleFamily.front, "left", { ...quarter, centre: [0, 0.775, 0.412] }, 0.02);
    const tie = sampleFamily.front.links.find(({ name }) => name === "tie-rod");
    const drawn = moved.links.find(({ name }) => name === "tie-rod");
    if (tie === undefined || drawn === undefined) throw new Error("the test family has a tie rod");
    const [ix, iy, iz] = tie.inner.at;
    expect(drawn.inner).toEqual([ix, iy + 0.02, iz]);
    const [ox, oy, oz] = tie.outer.at;
    expect(drawn.outer[0]).toBeCloseTo(-(oy - 0.775), 12);
    expect(drawn.outer[1]).toBeCloseTo(0.775 + ox, 12);
    expect(drawn.outer[2]).toBeCloseTo(oz + 0.1, 12);
  });

  it("carries a seat on an arm with that arm: its distances to the arm's joints stay", () => {
    const lifted = { ...sampleEffect.sound, centre: [0, 0.775, 0.372] as const };
    const moved = moveCorner(sampleFamily.front, "left", lifted, 0);
    const arm = moved.links.find(({ name }) => name === "lower-arm-front");
    const still = sampleFamily.front.links.find(({ name }) => name === "lower-arm-front");
    const { seat } = sampleFamily.front.spring;
    if (arm === undefined || still === undefined || seat.on !== "arm") throw new Error("a seat on the lower arm");
    const gap = (a: CarPoint, b: CarPoint) => Math.hypot(...[0, 1, 2].map((i) => (a[i] ?? 0) - (b[i] ?? 0)));
    expect(gap(moved.spring.seat, arm.inner)).toBeCloseTo(gap(seat.moving.at, still.inner.at), 12);
    expect(moved.spring.seat[2]).toBeGreaterThan(seat.moving.at[2]);
  });
});

describe("cornerReach", () => {
  it("keeps a wheel turned to full lock inside the plan, tyre and all", () => {
    const { centre, freeRadius, tyreWidth } = sampleFamily.front.wheel;
    const turned = (degrees: number) => {
      const a = (degrees * Math.PI) / 180;
      return { centre, spin: [Math.sin(a), Math.cos(a), 0] as const };
    };
    for (const degrees of [-40, 40]) {
      const wheel = turned(degrees);
      const reach = cornerReach(sampleFamily.front, "left", [wheel]);
      const [sx, sy] = wheel.spin;
      for (const along of [-1, 1])
        for (const across of [-1, 1]) {
          const x = centre[0] + along * freeRadius * sy + ((across * tyreWidth) / 2) * sx;
          const y = centre[1] - along * freeRadius * sx + ((across * tyreWidth) / 2) * sy;
          expect(x).toBeGreaterThan(reach.x[0]);
          expect(x).toBeLessThan(reach.x[1]);
          expect(y).toBeGreaterThan(reach.y[0]);
          expect(y).toBeLessThan(reach.y[1]);
        }
    }
    expect(cornerReach(sampleFamily.front, "left", [turned(0)])).toEqual(cornerReach(sampleFamily.front, "left"));
  });
});

describe("alignViews", () => {
  const reach = cornerReach(sampleFamily.rear, "left");
  const views = alignViews(reach, "left", { x: 24, y: 8, width: 592, height: 630 }, "angle");
  const point = [-2.5, 0.6, 0.3] as const;

  it("draws one point at one height from behind and from the side, at one distance from the middle in plan", () => {
    expect(views.behind.spot(point)[1]).toBeCloseTo(views.side.spot(point)[1], 9);
    expect(views.behind.spot(point)[0]).toBeCloseTo(views.above.spot(point)[0], 9);
  });

  it("keeps one scale in all views, front at the left from the left and at the right from the right", () => {
    const ahead = [-2.4, 0.6, 0.3] as const;
    const s = views.side.scale;
    expect(views.side.spot(point)[0] - views.side.spot(ahead)[0]).toBeCloseTo(0.1 * s, 9);
    expect(views.above.spot(point)[1] - views.above.spot(ahead)[1]).toBeCloseTo(0.1 * s, 9);
    const right = alignViews(
      cornerReach(sampleFamily.rear, "right"),
      "right",
      { x: 0, y: 0, width: 600, height: 600 },
      "row",
    );
    expect(right.side.spot(ahead)[0]).toBeGreaterThan(right.side.spot(point)[0]);
    expect(right.side.title).toContain("front at right");
  });
});

describe("drawGeometry", () => {
  it("draws both toes enlarged with the factor written, and both angles", () => {
    const said = textsOf(drawGeometry(sampleFamily, sampleEffect, options)).map(({ text }) => text);
    expect(said).toContain("0.41° torn");
    expect(said).toContain("0.19° sound");
    expect(said).toContain("toe, in is +, angle drawn 25 times");
    expect(said).toContain("front bush, torn");
  });

  it("leans the toe lines inward at their front end by the enlarged angle", () => {
    const lines = flatMarks(drawGeometry(sampleFamily, sampleEffect, options).marks).filter(
      (mark) => mark.kind === "path" && mark.stroke?.dash?.join() === "14,3,2,3",
    );
    const leans = lines.map((mark) => {
      if (mark.kind !== "path") return Number.NaN;
      const [[x0 = 0, y0 = 0] = [], [x1 = 0, y1 = 0] = []] = mark.d
        .slice(1)
        .split("L")
        .map((pair) => pair.split(" ").map(Number));
      return Math.atan2(x1 - x0, y0 - y1);
    });
    expect(leans[0]).toBeCloseTo(25 * sampleEffect.sound.toe, 2);
    expect(leans[1]).toBeCloseTo(25 * sampleEffect.faulty.toe, 2);
  });

  it("writes no angle whose sign is not sure: then only the difference, and nothing where that is not sure either", () => {
    const unsure = sampleEffect.figures.map((figure) =>
      figure.key === "toe-sound" ? { ...figure, signSure: false } : figure,
    );
    const known: FaultEffect = { ...sampleEffect, figures: unsure };
    const some = textsOf(drawGeometry(sampleFamily, known, options)).map(({ text }) => text);
    expect(some).toContain("0.22° further in, torn");
    expect(some.some((text) => text.includes("0.41°"))).toBe(false);
    const unknown: FaultEffect = { ...known, headline: { ...sampleEffect.headline, signSure: false } };
    const none = textsOf(drawGeometry(sampleFamily, unknown, { ...options, eye: EYE })).map(({ text }) => text);
    expect(none).toContain("toe not drawn: its sign is not sure");
    expect(none.some((text) => text.includes("0.22°"))).toBe(false);
  });

  it("stands in space in the free quarter where an eye is given, the part in the accent, in place of the sentence", () => {
    const seen = (eye: typeof EYE) => flatMarks(drawGeometry(sampleFamily, sampleEffect, { ...options, eye }).marks);
    const words = (marks: ReturnType<typeof seen>) =>
      marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
    const flat = flatMarks(drawGeometry(sampleFamily, sampleEffect, options).marks);
    const accents = (marks: ReturnType<typeof seen>) =>
      marks.filter((mark) => mark.kind !== "text" && JSON.stringify(mark).includes("accent")).length;
    const [before, round] = [seen(EYE), seen({ ...EYE, turn: 120 })];
    expect(words(before).some((text) => text.startsWith("From behind, a little"))).toBe(true);
    expect(words(round).some((text) => text.startsWith("From the left, a little"))).toBe(true);
    expect(words(before).join(" ")).not.toContain(sampleEffect.sentence.split(" ").slice(0, 3).join(" "));
    expect(words(flat).join(" ")).toContain(sampleEffect.sentence.split(" ").slice(0, 3).join(" "));
    expect(accents(before)).toBeGreaterThan(accents(flat));
  });

  it("puts the faulty part in the accent and rings the place", () => {
    const marks = flatMarks(drawGeometry(sampleFamily, sampleEffect, { ...options, ghosts: sampleGhosts }).marks);
    expect(marks.some((mark) => mark.kind === "path" && mark.fill === "accent")).toBe(true);
    expect(marks.filter((mark) => mark.kind === "circle" && mark.stroke?.colour === "accent")).toHaveLength(3);
  });

  it("keeps every word inside the drawing", () => {
    const scene = drawGeometry(sampleFamily, sampleEffect, options);
    for (const { x, y } of textsOf(scene)) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(scene.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThanOrEqual(scene.height);
    }
  });
});
