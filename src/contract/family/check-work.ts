import type { Finding } from "#numeric";
import { idWithoutSide, type Position, readingPlaceNames } from "#vehicle";
import { checkFastener } from "./check-fastener.ts";
import { checkSets } from "./check-sets.ts";
import { familyFinding } from "./family-finding.ts";
import { asObject, understood } from "./loose-axle.ts";
import { type Entry, nearestWords, unknownId } from "./work-ids.ts";
import { knownFaultSheet, limitSheet, operationSheet, remedySheet, targetSheet } from "./work-schema.ts";
import { lowerKey, upperKey } from "./work-units.ts";

type Raw = Readonly<Record<string, unknown>>;

/**
 * What the work of a sheet says together: ids that meet, places that exist, ranges that rise; whatever is wrong with the rest.
 * @param positions every position of the family; null where its axles are not understood, so that places cannot be checked
 */
export function checkWork(raw: Raw, positions: readonly Position[] | null): Finding[] {
  if (raw.work === undefined || raw.work === null) return [];
  const work = asObject(raw.work);
  const ids = (list: string): string[] =>
    entriesOf(work, list).flatMap(({ entry }) => {
      const { id } = asObject(entry);
      return typeof id === "string" ? [id] : [];
    });
  const operations = entriesOf(work, "operations").flatMap(({ entry, path }): Finding[] => {
    const operation = understood(operationSheet, entry);
    if (!operation) return [];
    return [
      ...unknownIds("unknown-access", `${path}.access`, operation.access ?? [], ids("access")),
      ...(operation.fasteners ?? []).flatMap((use, index) => checkFastener(use, `${path}.fasteners[${index}]`)),
    ];
  });
  const remedies = entriesOf(work, "remedies").flatMap(({ entry, path }): Finding[] => {
    const remedy = understood(remedySheet, entry);
    if (!remedy) return [];
    const places = placesOf(positions, remedy.axle ?? null);
    return [
      ...unknownIds("unknown-operation", `${path}.operations`, remedy.operations, ids("operations")),
      ...(remedy.parts ?? []).flatMap(({ part }, index) =>
        unknownId("unknown-part", `${path}.parts[${index}].part`, part, ids("parts")),
      ),
      ...remedy.cures.flatMap((place, index) => unknownPlace(`${path}.cures[${index}]`, place, places)),
    ];
  });
  return [
    ...["access", "operations", "remedies", "parts", "known_faults"].flatMap((list) => duplicates(work, list)),
    ...entriesOf(work, "limits").flatMap(({ entry, path }) => checkLimit(entry, path, positions)),
    ...operations,
    ...remedies,
    ...checkSets(entriesOf(work, "parts"), ids("parts")),
    ...entriesOf(work, "known_faults").flatMap(({ entry, path }) => checkFault(entry, path, positions)),
    ...targets(work),
  ];
}

function entriesOf(work: Raw, list: string): Entry[] {
  const entries: unknown[] = Array.isArray(work[list]) ? work[list] : [];
  return entries.map((entry, index) => ({ entry, path: `work.${list}[${index}]` }));
}

function duplicates(work: Raw, list: string): Finding[] {
  const first = new Map<string, string>();
  return entriesOf(work, list).flatMap(({ entry, path }): Finding[] => {
    const { id } = asObject(entry);
    if (typeof id !== "string") return [];
    const before = first.get(id);
    if (before === undefined) {
      first.set(id, path);
      return [];
    }
    const needed = `an id of its own; ${before} has this one`;
    return [familyFinding("duplicate-work-id", `${path}.id`, id, needed, "Others find it by its id.")];
  });
}

const unknownIds = (
  code: "unknown-access" | "unknown-operation",
  path: string,
  given: readonly string[],
  known: readonly string[],
) => given.flatMap((id, index) => unknownId(code, `${path}[${index}]`, id, known));

/** Everything a place may be called on an axle: item, item and detail, kind; and what is only read. */
function placesOf(positions: readonly Position[] | null, axle: string | null): readonly string[] | null {
  if (positions === null) return null;
  const here = positions.filter((position) => axle === null || position.axle === axle);
  const names = here.flatMap(({ item, detail, kind }) => [
    item,
    kind,
    ...(detail === null ? [] : [`${item}/${detail}`]),
  ]);
  return [...new Set([...names, ...readingPlaceNames])];
}

function unknownPlace(path: string, place: string, known: readonly string[] | null): Finding[] {
  if (known === null || known.includes(place)) return [];
  const hint = nearestWords(place, known, "Places are written item/detail, without axle and side.");
  return [familyFinding("unknown-place", path, place, "a place or a kind of place of this family", hint)];
}

function checkLimit(entry: unknown, path: string, positions: readonly Position[] | null): Finding[] {
  const limit = understood(limitSheet, entry);
  if (!limit) return [];
  const lower = limit[lowerKey(limit.quantity)] ?? null;
  const upper = limit[upperKey(limit.quantity)] ?? null;
  const upperName = upperKey(limit.quantity);
  const found = unknownPlace(`${path}.place`, limit.place, placesOf(positions, limit.axle ?? null));
  if (lower === null && upper === null) {
    const needed = `${lowerKey(limit.quantity)} or ${upperName}, or both`;
    found.push(
      familyFinding("limit-without-end", path, "neither end", needed, "Leave the limit out until it is on file."),
    );
  } else if (lower !== null && upper !== null && !(lower < upper))
    found.push(notRising(`${path}.${upperName}`, lower, upper));
  return found;
}

const notRising = (path: string, low: number, high: number): Finding =>
  familyFinding("range-not-rising", path, high, `more than ${low}`, "Swap the two ends.");

function checkFault(entry: unknown, path: string, positions: readonly Position[] | null): Finding[] {
  const fault = understood(knownFaultSheet, entry);
  if (!fault || positions === null) return [];
  const known = [...new Set(positions.map(idWithoutSide))];
  if (known.includes(fault.position)) return [];
  const hint = nearestWords(fault.position, known, "Positions are named axle/item/detail, without a side.");
  return [familyFinding("unknown-position", `${path}.position`, fault.position, "a position of this family", hint)];
}

function targets(work: Raw): Finding[] {
  const first = new Map<string, string>();
  return entriesOf(work, "alignment").flatMap(({ entry, path }): Finding[] => {
    const target = understood(targetSheet, entry);
    if (!target) return [];
    const found = (["camber_deg", "toe_deg", "caster_deg"] as const).flatMap((key) => {
      const range = target[key];
      return range && !(range[0] < range[1]) ? [notRising(`${path}.${key}`, range[0], range[1])] : [];
    });
    const before = first.get(target.axle);
    if (before === undefined) first.set(target.axle, path);
    else {
      const needed = `one target per axle; ${before} has this one`;
      found.push(familyFinding("duplicate-target", `${path}.axle`, target.axle, needed, "Leave one of the two out."));
    }
    return found;
  });
}
