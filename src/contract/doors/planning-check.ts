import type { Finding } from "#numeric";
import { entriesOf, isNumber, isObject, type Loose } from "./loose-corner.ts";
import { checkNamed, checkRepeated, type NamedEntry, namesOf } from "./named-entries.ts";

const listOf = (doc: Loose, key: string): readonly NamedEntry[] => namesOf(doc[key], key, "id");

const textsOf = (x: unknown, path: string): readonly NamedEntry[] =>
  Array.isArray(x) ? x.flatMap((name, i) => (typeof name === "string" ? [{ name, path: `${path}[${i}]` }] : [])) : [];

/** Odometers must not fall, and a visit that states its number states its place. */
function checkTime(doc: Loose): Finding[] {
  const findings: Finding[] = [];
  let before: { readonly at: number; readonly path: string } | null = null;
  for (const [i, visit] of entriesOf(doc.visits)) {
    const path = `visits[${i}].miles`;
    if (isNumber(visit.t) && visit.t !== i + 1)
      findings.push({
        code: "not-consistent",
        path: `visits[${i}].t`,
        got: String(visit.t),
        needed: `${i + 1}, its place in the list`,
        hint: "Visits stand in the order of time; t may be left out.",
      });
    if (!isNumber(visit.miles)) continue;
    if (before !== null && visit.miles < before.at) findings.push(earlier(path, visit.miles, before));
    before = { at: visit.miles, path };
  }
  if (before !== null && isNumber(doc.horizon_miles) && doc.horizon_miles < before.at)
    findings.push(earlier("horizon_miles", doc.horizon_miles, before));
  return findings;
}

const earlier = (path: string, got: number, before: { readonly at: number; readonly path: string }): Finding => ({
  code: "not-consistent",
  path,
  got: String(got),
  needed: `at least ${before.at}, the odometer at ${before.path}`,
  hint: "Visits stand in the order of time and the horizon after them.",
});

/** A part with a life needs what a failure costs and what it would still be worth. */
function checkLives(doc: Loose): Finding[] {
  return entriesOf(doc.parts).flatMap(([i, part]) =>
    !isObject(part.life)
      ? []
      : ["fail_cost", "end_value_share"]
          .filter((key) => part[key] === undefined || part[key] === null)
          .map((key) => ({
            code: "missing-key",
            path: `parts[${i}].${key}`,
            got: "nothing",
            needed: "a number: the part has a life",
            hint: "Take the life out where failures shall not count.",
          })),
  );
}

function checkDates(doc: Loose): Finding[] {
  const last = Array.isArray(doc.visits) ? doc.visits.length : null;
  return entriesOf(doc.upgrades).flatMap(([i, { required_by: by }]) =>
    last === null || !isNumber(by) || by <= last
      ? []
      : [
          {
            code: "out-of-range",
            path: `upgrades[${i}].required_by`,
            got: String(by),
            needed: `the number of a visit, at most ${last}`,
            hint: "Visits are numbered from 1.",
          },
        ],
  );
}

/** Everything about an instance that no schema can see: names that stand twice or nowhere, order in time, lives. */
export function checkPlan(doc: unknown): Finding[] {
  if (!isObject(doc)) return [];
  const parts = listOf(doc, "parts");
  const items = [...parts, ...listOf(doc, "upgrades")];
  const operations = listOf(doc, "operations");
  const hardware = listOf(doc, "hardware");
  const rule = isObject(doc.alignment) ? doc.alignment : null;
  const findings = [items, operations, hardware, listOf(doc, "kits")].flatMap(checkRepeated);
  const name = (named: readonly NamedEntry[], known: readonly NamedEntry[], what: string): void => {
    findings.push(...checkNamed(named, known, what), ...checkRepeated(named));
  };
  for (const key of ["parts", "upgrades"]) {
    for (const [i, item] of entriesOf(doc[key])) {
      if (!Array.isArray(item.access)) continue;
      for (const [g, group] of item.access.entries())
        name(textsOf(group, `${key}[${i}].access[${g}]`), operations, "operation");
    }
  }
  for (const [i, u] of entriesOf(doc.upgrades)) name(textsOf(u.requires, `upgrades[${i}].requires`), parts, "part");
  for (const [i, o] of entriesOf(doc.operations)) {
    name(textsOf(o.needs, `operations[${i}].needs`), operations, "operation");
    name(textsOf(o.disturbs, `operations[${i}].disturbs`), hardware, "piece of hardware");
  }
  for (const [i, k] of entriesOf(doc.kits)) name(textsOf(k.contents, `kits[${i}].contents`), parts, "part");
  for (const [i, pair] of Array.isArray(doc.pairs) ? doc.pairs.entries() : [])
    name(textsOf(pair, `pairs[${i}]`), parts, "part");
  if (rule) {
    if (typeof rule.op === "string") name([{ name: rule.op, path: "alignment.op" }], operations, "operation");
    name(textsOf(rule.if_parts, "alignment.if_parts"), items, "part or upgrade");
    name(textsOf(rule.if_ops, "alignment.if_ops"), operations, "operation");
  }
  return [...findings, ...checkTime(doc), ...checkLives(doc), ...checkDates(doc)];
}
