import type { Finding } from "#numeric";
import { entriesOf, isNumber, type Loose } from "./loose-corner.ts";

/** Combinations of sides that are looked through: triple with every loose link, double with every loose joint. */
const MOST_COMBINATIONS = 3 ** 7;
/** Range ends double what is to be looked for. */
const MOST_RANGED = 3;

const KEYS = {
  soft: { own: ["factor", "factor_low", "factor_high"], other: ["total_mm", "total_low_mm", "total_high_mm"] },
  play: { own: ["total_mm", "total_low_mm", "total_high_mm"], other: ["factor", "factor_low", "factor_high", "end"] },
} as const;

const kindOf = (fault: Loose): "soft" | "play" | null =>
  fault.kind === undefined || fault.kind === "soft" ? "soft" : fault.kind === "play" ? "play" : null;

/** What is wrong with faults by themselves: keys that do not go with their kind, ranges that are none, too many at once. */
export function checkBodiesFaults(doc: Loose, isLink: (name: unknown) => boolean): Finding[] {
  const faults = entriesOf(doc.faults);
  const loose = new Set(
    faults.flatMap(([, f]) => (kindOf(f) === "play" && typeof f.part === "string" ? [f.part] : [])),
  );
  const combinations = [...loose].reduce((product, part) => product * (isLink(part) ? 3 : 2), 1);
  const ranged = faults.filter(([, f]) => f.factor_low !== undefined || f.total_low_mm !== undefined);
  return [
    ...faults.flatMap(([i, fault]) => checkFault(fault, `faults[${i}]`)),
    ...(combinations > MOST_COMBINATIONS
      ? [
          tooMany(
            `${loose.size} parts with play: ${combinations} combinations of sides`,
            `at most ${MOST_COMBINATIONS}: 7 links, or 11 joints, or fewer of both`,
            "A loose link stands at either end of its play or in it, a joint at its end or in it; every combination is looked at.",
          ),
        ]
      : []),
    ...(ranged.length > MOST_RANGED
      ? [
          tooMany(
            `${ranged.length} faults with a range`,
            `at most ${MOST_RANGED} at once`,
            "Each range doubles the states to be looked for.",
          ),
        ]
      : []),
  ];
}

const tooMany = (got: string, needed: string, hint: string): Finding => ({
  code: "out-of-range",
  path: "faults",
  got,
  needed,
  hint,
});

function checkFault(fault: Loose, path: string): Finding[] {
  const kind = kindOf(fault);
  if (kind === null) return [];
  const { own, other } = KEYS[kind];
  const [middle, low, high] = own;
  const found: Finding[] = other.flatMap((key) =>
    fault[key] === undefined
      ? []
      : [
          {
            code: "key-not-used-here",
            path: `${path}.${key}`,
            got: JSON.stringify(fault[key]),
            needed: `nothing here: the fault is "${kind}"`,
            hint:
              key === "end"
                ? "Play is told of a whole link, along its line."
                : kind === "play"
                  ? 'A softer or firmer part is a fault of its own, of kind "soft".'
                  : 'Play is a fault of its own: "kind": "play".',
          },
        ],
  );
  const missing = (key: string, hint: string): Finding => ({
    code: "missing-key",
    path: `${path}.${key}`,
    got: "nothing",
    needed: kind === "play" ? "a width in millimetres" : "a factor above 0",
    hint,
  });
  if (fault[middle] === undefined)
    found.push(
      missing(
        middle,
        kind === "play"
          ? "How far the part moves freely from side to side."
          : "What is left of its rates; above 1 it is firmer.",
      ),
    );
  if ((fault[low] === undefined) !== (fault[high] === undefined))
    found.push(missing(fault[low] === undefined ? low : high, "A range has two ends."));
  const [a, m, b] = [fault[low], fault[middle], fault[high]];
  if (isNumber(a) && isNumber(m) && isNumber(b) && !(a <= m && m <= b))
    found.push({
      code: "not-consistent",
      path: `${path}.${low}`,
      got: `${a} to ${b} about ${m}`,
      needed: `${low} at most ${middle}, and that at most ${high}`,
      hint: "The middle lies within its range.",
    });
  return found;
}
