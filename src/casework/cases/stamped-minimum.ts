import type { AxleName, FamilyWork, Limit } from "#vehicle";
import type { VisitDocument } from "./documents.ts";

/** Names under which the thickness of a disc may have its limit on file. */
const DISC_PLACES: readonly string[] = ["disc/thickness", "disc"];

const AXLES: readonly AxleName[] = ["front", "rear"];

/**
 * Limits with the minimum that is stamped on the discs of this car: its maker's, whatever is on file of the car line.
 * Where nothing was read off a disc, the limits come back as they are.
 */
export function withStampedMinimum(work: FamilyWork, { discMinimum }: Pick<VisitDocument, "discMinimum">): FamilyWork {
  const stamped = AXLES.flatMap((axle): readonly Limit[] => {
    const lower = discMinimum?.[axle] ?? null;
    return lower === null
      ? []
      : [
          {
            place: "disc/thickness",
            axle,
            quantity: "thickness",
            lower,
            upper: null,
            loadState: null,
            owner: "maker",
            source: "stamped on the disc",
            grade: 3,
          },
        ];
  });
  if (stamped.length === 0) return work;
  const isStamped = (axle: AxleName): boolean => stamped.some((limit) => limit.axle === axle);
  const kept = work.limits.flatMap((limit): readonly Limit[] => {
    if (limit.quantity !== "thickness" || !DISC_PLACES.includes(limit.place)) return [limit];
    if (limit.axle !== null) return isStamped(limit.axle) ? [] : [limit];
    return AXLES.filter((axle) => !isStamped(axle)).map((axle) => ({ ...limit, axle }));
  });
  return { ...work, limits: [...stamped, ...kept] };
}
