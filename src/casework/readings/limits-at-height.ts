import type { AlignmentTarget, AxleName, Limit } from "#vehicle";
import type { SaidLimit } from "../cases/danger-limits.ts";
import { ownerWords } from "../cases/reading-reasons.ts";
import { type CarriedWheel, targetAtHeight } from "./carry-targets.ts";
import { limitsOfTargets } from "./targets-on-file.ts";

/** Heights and angles on file as limits, those of one wheel carried to the height it stands at and saying so. */
export function limitsAtHeight(
  targets: readonly AlignmentTarget[],
  axle: AxleName,
  wheel: CarriedWheel | undefined,
): readonly (Limit | SaidLimit)[] {
  if (wheel === undefined) return limitsOfTargets(targets);
  const here = targets.map((target) => (target.axle === axle ? targetAtHeight(target, wheel) : target));
  return limitsOfTargets(here).map((limit) => {
    const { quantity } = limit;
    const isCarried = (quantity === "camber" || quantity === "toe") && wheel.angles[quantity].kind === "carried";
    return limit.axle === axle && isCarried
      ? { ...limit, whose: `${ownerWords[limit.owner]}, carried to the height it stands at` }
      : limit;
  });
}
