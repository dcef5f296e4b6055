import type { VisitDocument } from "./documents.ts";
import type { StoredLook } from "./look.ts";

/**
 * Looks of earlier visits that later ones may be held against: heights of a visit of which nobody said that the car had
 * settled are left out.
 * @param visits the visits before, oldest first
 */
export function looksBefore(
  looks: readonly StoredLook[],
  visits: readonly { readonly id: string; readonly body: Pick<VisitDocument, "settled"> }[],
): readonly StoredLook[] {
  const settled = new Map(visits.map(({ id, body }) => [id, body.settled]));
  return looks.filter(
    ({ visit, content }) =>
      settled.has(visit) &&
      (content.kind !== "reading" || content.quantity !== "ride-height" || settled.get(visit) === true),
  );
}
