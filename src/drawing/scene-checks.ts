import { type Box, boxesOverlap, type Segment } from "./labels/crossing.ts";
import type { Spot } from "./path.ts";
import type { Mark, Scene, Target, TextMark, TypeScale } from "./scene.ts";
import { computeStyleWidth } from "./text-width.ts";
import { faces, LEAST_TARGET } from "./tokens.ts";

/** Pairs of targets of a scene that share area, by name. */
export function overlappingTargets({ targets }: Scene): readonly string[] {
  return targets.flatMap((target, i) =>
    targets.slice(i + 1).flatMap((other) => (boxesOverlap(target, other) ? [`${target.name} | ${other.name}`] : [])),
  );
}

/** Targets a thumb would miss: smaller than the least target, or reaching out of the scene. */
export function badTargets({ targets, width, height }: Scene): readonly Target[] {
  const least = LEAST_TARGET - 1e-6;
  return targets.filter(
    (target) =>
      target.width < least ||
      target.height < least ||
      target.x < -1e-6 ||
      target.y < -1e-6 ||
      target.x + target.width > width + 1e-6 ||
      target.y + target.height > height + 1e-6,
  );
}

/** All marks of a scene, groups opened. */
export function flatMarks(marks: readonly Mark[]): readonly Mark[] {
  return marks.flatMap((mark) => (mark.kind === "group" ? flatMarks(mark.marks) : [mark]));
}

export const textsOf = (scene: Scene): readonly TextMark[] =>
  flatMarks(scene.marks).filter((mark): mark is TextMark => mark.kind === "text");

/** The slanted part of every leader of a scene: from its knee to its point. */
export function leadersOf(scene: Scene): readonly Segment[] {
  return flatMarks(scene.marks).flatMap((mark): readonly Segment[] => {
    if (mark.kind !== "path" || mark.fill !== undefined) return [];
    if (mark.stroke?.width !== 0.9 && !(mark.stroke?.width === 1.4 && mark.stroke.colour === "accent")) return [];
    const spots = mark.d
      .slice(1)
      .split("L")
      .map((pair): Spot => {
        const [x = Number.NaN, y = Number.NaN] = pair.split(" ").map(Number);
        return [x, y];
      });
    const [, knee, end] = spots;
    return spots.length === 3 && knee !== undefined && end !== undefined ? [[knee, end]] : [];
  });
}

/** Box of a text from the top of a capital to below the base line, turned text left out. */
export function textBox(mark: TextMark, type: TypeScale = "desk"): Box {
  const { size } = faces[type][mark.style];
  const width = computeStyleWidth(mark.text, mark.style, type);
  const x = mark.anchor === "middle" ? mark.x - width / 2 : mark.anchor === "end" ? mark.x - width : mark.x;
  return { x, y: mark.y - size * 0.66, width, height: size * 0.78 };
}

/** Texts of a scene that reach out of it, and pairs that share ground. */
export function crowdedTexts(scene: Scene): readonly string[] {
  const boxes = textsOf(scene).flatMap((mark) =>
    mark.rotate === undefined ? [{ text: mark.text, box: textBox(mark, scene.type) }] : [],
  );
  const outside = boxes.filter(
    ({ box }) =>
      box.x < -0.5 || box.y < -0.5 || box.x + box.width > scene.width + 0.5 || box.y + box.height > scene.height + 0.5,
  );
  const pairs = boxes.flatMap(({ text, box }, i) =>
    boxes.slice(i + 1).flatMap((other) => (boxesOverlap(box, other.box) ? [`${text} | ${other.text}`] : [])),
  );
  return [...outside.map(({ text }) => `outside: ${text}`), ...pairs];
}
