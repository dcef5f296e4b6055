import { boxesOverlap, type Segment } from "./labels/crossing.ts";
import type { Spot } from "./path.ts";
import type { Mark, Scene, Target, TextMark } from "./scene.ts";
import { LEAST_TARGET } from "./tokens.ts";

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
