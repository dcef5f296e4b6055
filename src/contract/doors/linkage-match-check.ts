import type { Finding } from "#numeric";
import { checkCorner, linkNamesOf } from "./linkage-check.ts";
import { entriesOf, isObject, type Loose } from "./loose-corner.ts";
import { checkNamed, checkRepeated, type NamedEntry } from "./named-entries.ts";

/** Names of all points of a corner as its links, strut and trailing arm give them; null where a link has no name. */
function pointNamesOf(doc: Loose): readonly NamedEntry[] | null {
  const links = linkNamesOf(doc);
  if (!links) return null;
  const names = links.flatMap((name) => [`${name}.inner`, `${name}.outer`]);
  if (isObject(doc.strut)) names.push("strut.top", "strut.axis_point");
  if (isObject(doc.trailing_arm)) names.push("trailing_arm.bush");
  return names.map((name) => ({ name, path: "links" }));
}

const texts = (list: unknown, path: string): readonly NamedEntry[] =>
  Array.isArray(list)
    ? list.flatMap((name: unknown, i) => (typeof name === "string" ? [{ name, path: `${path}[${i}]` }] : []))
    : [];

/** Points said to be measured from one base: each there, and once. */
export function checkBases(document: Loose): readonly Finding[] {
  const known = pointNamesOf(document);
  const bases = basesOf(document);
  return [
    ...bases.flatMap((base) => checkRepeated(base)),
    ...(known ? checkNamed(bases.flat(), known, "point of this corner") : []),
  ];
}

const basesOf = (document: Loose) =>
  entriesOf(document.one_base).map(([i, entry]) => texts(entry.points, `one_base[${i}].points`));

/** What no schema sees of a corner that is to be matched: names of points and links, and angles without uncertainty. */
export function checkMatch(document: unknown): readonly Finding[] {
  if (!isObject(document)) return [];
  const known = pointNamesOf(document);
  const links = linkNamesOf(document);
  const own = entriesOf(document.points).flatMap(([i, entry]) =>
    typeof entry.point === "string" ? [{ name: entry.point, path: `points[${i}].point` }] : [],
  );
  const lengths = entriesOf(document.lengths).flatMap(([i, entry]) =>
    typeof entry.link === "string" ? [{ name: entry.link, path: `lengths[${i}].link` }] : [],
  );
  return [
    ...checkCorner(document),
    ...checkRepeated(own),
    ...checkRepeated(lengths),
    ...(known ? checkNamed(own, known, "point of this corner") : []),
    ...checkBases(document),
    ...(links
      ? checkNamed(
          lengths,
          links.map((name) => ({ name, path: "links" })),
          "link",
        )
      : []),
    ...entriesOf(document.readings).flatMap(([i, reading]) => checkAngles(reading, `readings[${i}]`)),
  ];
}

/** An angle and its uncertainty come together, and a reading has one angle at least. */
function checkAngles(reading: Loose, path: string): Finding[] {
  const kinds = ["camber", "toe"] as const;
  const given = kinds.filter((kind) => reading[`${kind}_deg`] !== undefined || reading[`${kind}_u_deg`] !== undefined);
  if (given.length === 0) {
    return [
      {
        code: "missing-key",
        path,
        got: "a height without an angle",
        needed: "camber_deg with camber_u_deg, toe_deg with toe_u_deg, or both",
        hint: "A height alone says nothing of the points.",
      },
    ];
  }
  return given.flatMap((kind) =>
    [`${kind}_deg`, `${kind}_u_deg`]
      .filter((key) => reading[key] === undefined)
      .map((key) => ({
        code: "missing-key",
        path: `${path}.${key}`,
        got: "nothing",
        needed: "a number in degrees",
        hint: "An angle and its standard uncertainty (half of what stands after plus-minus) come together.",
      })),
  );
}
