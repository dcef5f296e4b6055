import type { Finding } from "#numeric";
import { checkBodiesFaults } from "./bodies-fault-check.ts";
import { checkAxis } from "./linkage-check.ts";
import { entriesOf, isObject, type Loose } from "./loose-corner.ts";
import { checkMixedRates } from "./mixed-units.ts";
import { checkNamed, checkRepeated, namesOf } from "./named-entries.ts";

const missing = (path: string, needed: string, hint: string): Finding => ({
  code: "missing-key",
  path,
  got: "nothing",
  needed,
  hint,
});

const unused = (path: string, got: unknown, hint: string): Finding => ({
  code: "key-not-used-here",
  path,
  got: JSON.stringify(got),
  needed: "nothing here",
  hint,
});

/** Rubber, members and faults of a layout: each of a part that is there, once, and with all it needs. */
export function checkBodiesRubber(doc: Loose): Finding[] {
  const layout = isObject(doc.layout) ? doc.layout : {};
  const links = namesOf(layout.links, "layout.links", "name");
  const joints = namesOf(layout.joints, "layout.joints", "name");
  const isLink = (name: unknown): boolean => links.some((l) => l.name === name);
  const kindOf = (name: unknown): unknown => entriesOf(layout.joints).find(([, j]) => j.name === name)?.[1].kind;
  /** A link's end or a joint; null where the end is not said, which is told by itself. */
  const placeOf = ({ part, end }: Loose): string | null => {
    if (typeof part !== "string") return null;
    if (!isLink(part)) return part;
    return end === "from" || end === "to" ? `${part}.${end}` : null;
  };
  const parts = (list: "rubber" | "faults") =>
    entriesOf(doc[list]).flatMap(([i, entry]) =>
      typeof entry.part === "string" ? [{ name: entry.part, path: `${list}[${i}].part` }] : [],
    );
  const known = entriesOf(doc.rubber).map(([, entry]) => placeOf(entry));
  const members = entriesOf(doc.members).flatMap(([i, m]) =>
    typeof m.link === "string" ? [{ name: m.link, path: `members[${i}].link` }] : [],
  );
  return [
    ...(isObject(doc.layout) && layout.spring === undefined
      ? [missing("layout.spring", "the spring that carries the wheel", "Without one nothing holds the wheel up.")]
      : []),
    ...checkNamed([...parts("rubber"), ...parts("faults")], [...links, ...joints], "link or joint"),
    ...checkNamed(members, links, "link"),
    ...checkRepeated(members),
    ...checkRepeated(
      entriesOf(doc.rubber).flatMap(([i, entry]) => {
        const name = placeOf(entry);
        return name === null ? [] : [{ name, path: `rubber[${i}]` }];
      }),
    ),
    ...checkMixedRates(doc, (key) => key),
    ...(["rubber", "faults"] as const).flatMap((list) =>
      entriesOf(doc[list]).flatMap(([i, entry]) =>
        entry.kind === "play" ? [] : checkEnd(entry, `${list}[${i}]`, isLink(entry.part)),
      ),
    ),
    ...checkBodiesFaults(doc, isLink),
    ...entriesOf(doc.rubber).flatMap(([i, entry]) =>
      checkRates(entry, `rubber[${i}]`, isLink(entry.part) ? "link" : kindOf(entry.part)),
    ),
    ...entriesOf(doc.faults).flatMap(([i, entry]) => {
      const place = placeOf(entry);
      const isThere = isLink(entry.part) || kindOf(entry.part) !== undefined;
      return entry.kind !== "play" && place !== null && isThere && !known.includes(place)
        ? [
            {
              code: "nothing-soft",
              path: `faults[${i}].part`,
              got: place,
              needed: "an end or joint that is listed in rubber",
              hint: "What is not listed is rigid: there is nothing that could be torn.",
            },
          ]
        : [];
    }),
  ];
}

/** A link has two ends, a joint none. */
function checkEnd(entry: Loose, path: string, isLink: boolean): Finding[] {
  if (typeof entry.part !== "string") return [];
  if (isLink && entry.end === undefined)
    return [missing(`${path}.end`, '"from" or "to"', "A link has rubber at either end.")];
  return !isLink && entry.end !== undefined ? [unused(`${path}.end`, entry.end, "A joint has no ends.")] : [];
}

const TURNING = ["conical_nm_per_deg", "torsional_nm_per_deg"] as const;
const NOT_OF_A_SLIDER = [
  ["axial_n_per_mm", "A slider slides freely along its line."],
  ["torsional_nm_per_deg", "A slider turns freely about its line."],
] as const;

/** Which rates go with what the part is: "link" or the kind of joint. */
function checkRates(entry: Loose, path: string, kind: unknown): Finding[] {
  const has = (key: string): boolean => entry[key] !== undefined;
  const found: Finding[] = checkAxis(entry.axis, `${path}.axis`);
  if (has("voided_n_per_mm") !== has("clocking_deg"))
    found.push(
      missing(
        `${path}.${has("voided_n_per_mm") ? "clocking_deg" : "voided_n_per_mm"}`,
        "voided_n_per_mm and clocking_deg together, or neither",
        "A rate through voids holds in one direction across the axis; the angle says in which.",
      ),
    );
  if (kind === "link") {
    if (has("axial_n_per_mm") !== has("axis"))
      found.push(
        missing(
          `${path}.${has("axis") ? "axial_n_per_mm" : "axis"}`,
          "axial_n_per_mm and axis together, or neither",
          "Without an axis the end is equally stiff in every direction.",
        ),
      );
    const needing = ["voided_n_per_mm", ...TURNING].filter(has);
    if (needing.length > 0 && !has("axis"))
      found.push(
        missing(
          `${path}.axis`,
          `the axis of the bush, as ${needing.join(" and ")} ${needing.length > 1 ? "are" : "is"} given`,
          "A ball has no axis: no voids, and nothing that resists a turn.",
        ),
      );
    return found;
  }
  if (kind !== undefined && has("axis"))
    found.push(unused(`${path}.axis`, entry.axis, "A joint's axis stands in the layout."));
  if (kind === "ball")
    for (const key of ["axial_n_per_mm", "voided_n_per_mm", "clocking_deg", ...TURNING])
      if (has(key))
        found.push(
          unused(
            `${path}.${key}`,
            entry[key],
            'A ball has one rate, radial_n_per_mm; rubber with an axis is of kind "bush".',
          ),
        );
  if (kind === "slider")
    for (const [key, why] of NOT_OF_A_SLIDER) if (has(key)) found.push(unused(`${path}.${key}`, entry[key], why));
  return found;
}
