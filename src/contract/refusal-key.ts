import { computeEditDistance, type Finding } from "#numeric";
import { findNearest } from "./edit-distance.ts";
import { formatConversion, splitUnit } from "./wire-unit.ts";

const mostKeysNamed = 16;

const listKeys = (known: readonly string[]): string => {
  const named = known.slice(0, mostKeysNamed).join(", ");
  return known.length > mostKeysNamed ? `${named} and ${known.length - mostKeysNamed} more` : named;
};

/** What is said where a key differs from a known one by its unit alone (or by the unit and one letter); null where it does not. */
const findUnitTwin = (
  key: string,
  known: readonly string[],
): { readonly meant: string; readonly hint: string } | null => {
  const given = splitUnit(key);
  for (const slack of [0, 1]) {
    for (const meant of known) {
      const wanted = splitUnit(meant);
      if (wanted.unit === null || wanted.unit.suffix === given.unit?.suffix) continue;
      if (computeEditDistance(given.stem, wanted.stem) > (wanted.stem.length > 3 ? slack : 0)) continue;
      if (given.unit === null) return { meant, hint: `The unit stands in the key: ${meant}, in ${wanted.unit.words}.` };
      const conversion = formatConversion(given.unit, wanted.unit);
      const how = conversion ?? `${given.unit.words} do not measure the same as ${wanted.unit.words}`;
      return { meant, hint: `The key here is ${meant}: ${how}.` };
    }
  }
  return null;
};

/**
 * The finding for a key nobody reads: another unit, a missing unit, a slip of spelling, or simply unknown.
 * `open` are the known keys that are not there yet; they are preferred as the one that was meant.
 */
export const unknownKeyFinding = (
  key: string,
  path: string,
  known: readonly string[],
  open: readonly string[],
): { readonly finding: Finding; readonly meant: string | null } => {
  const shown = key.length > 60 ? `${key.slice(0, 60)}…` : key === "" ? "a key without a name" : key;
  const twin = findUnitTwin(key, open) ?? findUnitTwin(key, known);
  if (twin !== null) {
    const finding = { code: "key-unit", path, got: shown, needed: `the key ${twin.meant}`, hint: twin.hint };
    return { finding, meant: twin.meant };
  }
  const meant = findNearest(key, open) ?? findNearest(key, known);
  const needed =
    meant === null ? (known.length === 0 ? "no keys here" : `one of: ${listKeys(known)}`) : `the key ${meant}`;
  const hint = meant === null ? "Take it out; nothing is ignored." : `The nearest known key is ${meant}.`;
  return { finding: { code: "unknown-key", path, got: shown, needed, hint }, meant };
};
