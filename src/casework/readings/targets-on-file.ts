import type { AlignmentTarget, AxleName, Grade, Limit, QuantityName } from "#vehicle";
import { type Apart, ownerWords, shownValue } from "../cases/reading-reasons.ts";

/** A height or an angle beyond what is on file asks to be planned: it wears tyres, and by itself breaks nothing. */
const GRADE_BEYOND_TARGET = 2 satisfies Grade;

/** The targets of an axle; null: nothing on file. */
export const targetOf = (targets: readonly AlignmentTarget[], axle: AxleName): AlignmentTarget | null =>
  targets.find((target) => target.axle === axle) ?? null;

/** Heights and angles on file as limits, each with whose it is: set for a car that stands on its wheels. */
export function limitsOfTargets(targets: readonly AlignmentTarget[]): readonly Limit[] {
  return targets.flatMap((target): Limit[] => {
    const { axle, owner, source, hubToArch, heightTolerance } = target;
    const limit = (place: string, quantity: QuantityName, range: readonly [number, number] | null): Limit[] =>
      range === null
        ? []
        : [
            {
              place,
              axle,
              quantity,
              lower: range[0],
              upper: range[1],
              loadState: "standing",
              owner,
              source,
              grade: GRADE_BEYOND_TARGET,
            } as const,
          ];
    const height: readonly [number, number] | null =
      hubToArch === null || heightTolerance === null
        ? null
        : [hubToArch - heightTolerance, hubToArch + heightTolerance];
    return [
      ...limit("ride-height", "ride-height", height),
      ...limit("alignment", "camber", target.camber),
      ...limit("alignment", "toe", target.toe),
      ...limit("alignment", "caster", target.caster),
    ];
  });
}

/** How far left and right may differ by what is on file of an axle; null where nothing is. */
export function apartOnFile(target: AlignmentTarget | null, quantity: QuantityName): Apart | null {
  const allowed =
    quantity === "ride-height"
      ? target?.heightApart
      : quantity === "camber"
        ? target?.camberApart
        : quantity === "caster"
          ? target?.casterApart
          : null;
  return target && typeof allowed === "number" ? { allowed, owner: target.owner, grade: GRADE_BEYOND_TARGET } : null;
}

/** The height on file without a tolerance: it can be named, and nothing can be held against it. */
export const heightOnFile = (target: AlignmentTarget | null): string | null =>
  target?.hubToArch == null
    ? null
    : `${shownValue("ride-height", target.hubToArch)} on file, ${ownerWords[target.owner]}, without a tolerance: not held against it`;
