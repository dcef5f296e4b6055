import type { VisitDocument } from "./documents.ts";
import type { StoredLook } from "./look.ts";

/** Stands on records nobody has put a name to. */
export const NOBODY = "not named";

/** More names than this do not fit a title block. */
const MOST_NAMES = 2;

/**
 * Who stands on the sheets of a visit: who began it, else those who looked, most looks first, else who records where the
 * sheet is made; "not named" where none of them gave a name.
 */
export function recordedBy(
  visit: Pick<VisitDocument, "by">,
  looks: readonly Pick<StoredLook, "who">[],
  recorder: string | null = null,
): string {
  if (visit.by !== NOBODY) return visit.by;
  const counts = new Map<string, number>();
  for (const { who } of looks) if (who !== NOBODY) counts.set(who, (counts.get(who) ?? 0) + 1);
  const names = [...counts].toSorted(([, a], [, b]) => b - a).map(([who]) => who);
  if (names.length === 0) return recorder ?? NOBODY;
  return names.length > MOST_NAMES ? `${names.slice(0, MOST_NAMES).join(", ")} and others` : names.join(", ");
}
