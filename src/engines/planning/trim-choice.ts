import type { PlanInstance, VisitChoice } from "./instance.ts";

/** True where a visit's rules still hold with these operations only. */
function isEnough(plan: PlanInstance, choice: VisitChoice, kept: ReadonlySet<string>): boolean {
  const items = [...plan.parts, ...plan.upgrades].filter((i) => choice.replace.includes(i.id));
  const rule = plan.alignment;
  const asksAlignment =
    rule !== null &&
    (choice.replace.some((i) => rule.ifParts.includes(i)) || rule.ifOperations.some((o) => kept.has(o)));
  return (
    items.every((item) => item.access.every((group) => group.some((o) => kept.has(o)))) &&
    plan.operations.every((o) => !kept.has(o.id) || o.needs.every((need) => kept.has(need))) &&
    (!asksAlignment || kept.has(rule.operation))
  );
}

/**
 * A visit without the operations and kits it does not need: where they cost nothing a solver may leave them in.
 * Never dearer, never longer.
 */
export function trimChoice(plan: PlanInstance, choice: VisitChoice): VisitChoice {
  let operations = [...choice.operations];
  for (let before = -1; before !== operations.length; ) {
    before = operations.length;
    for (const id of [...operations].reverse()) {
      const without = operations.filter((o) => o !== id);
      if (isEnough(plan, choice, new Set(without))) operations = without;
    }
  }
  let kits = plan.kits.filter((k) => choice.kits.includes(k.id));
  for (const kit of [...kits].reverse()) {
    const others = kits.filter((k) => k !== kit);
    const alone = kit.contents.filter(
      (id) => choice.replace.includes(id) && !others.some((k) => k.contents.includes(id)),
    );
    if (alone.length === 0) kits = others;
  }
  return { ...choice, operations, kits: kits.map((k) => k.id) };
}
