import { exact, isMore, plus, toNumber } from "./exact-number.ts";
import { ExactPlan, findBrokenDate } from "./exact-plan.ts";
import type { AnswerRecord, ChoiceRecord, InstanceRecord } from "./instance-record.ts";

/** What an answer's own choices cost, in cents, with everything about them that breaks a rule or was stated wrongly. */
export function checkAnswer(
  instance: InstanceRecord,
  answer: AnswerRecord,
): { cents: number; wrong: readonly string[] } {
  const model = new ExactPlan(instance);
  const when = new Map<string, number[]>([...model.parts.keys(), ...model.upgrades.keys()].map((id) => [id, []]));
  const wrong: string[] = [];
  let cents = 0;
  const seen = new Set<number>();
  for (const choice of answer.choices) {
    if (seen.has(choice.visit) || choice.visit < 1 || choice.visit > model.last)
      wrong.push(`visit ${choice.visit} unknown or twice`);
    seen.add(choice.visit);
    for (const id of choice.replace)
      when.get(id)?.push(choice.visit) ?? wrong.push(`visit ${choice.visit}: unknown ${id}`);
    const checked = checkVisit(model, choice);
    wrong.push(...checked.wrong);
    cents += checked.cents;
  }
  for (const id of model.parts.keys()) {
    const dates = (when.get(id) ?? []).sort((a, b) => a - b);
    [...dates, model.last + 1].forEach((to, i) => {
      const span = model.span(id, dates[i - 1] ?? 0, to);
      if (span === null) wrong.push(`${id}: interval to ${to} not allowed`);
      else cents += span;
    });
  }
  const broken = findBrokenDate(model, when);
  return { cents, wrong: broken === null ? wrong : [...wrong, broken] };
}

function checkVisit(model: ExactPlan, choice: ChoiceRecord): { cents: number; wrong: readonly string[] } {
  const { visit: t, replace, operations, kits } = choice;
  const { alignment } = model.instance;
  const there = new Set(operations);
  const wrong: string[] = [];
  const say = (what: string): void => void wrong.push(`visit ${t}: ${what}`);
  for (const id of replace) {
    for (const group of (model.parts.get(id) ?? model.upgrades.get(id))?.access ?? [])
      if (!group.some((o) => there.has(o))) say(`${id} not reached`);
  }
  for (const o of operations) {
    if (![...model.below(o)].every((q) => there.has(q))) say(`${o} lacks an operation it needs`);
  }
  const asks =
    alignment &&
    (replace.some((i) => alignment.if_parts.includes(i)) || operations.some((o) => alignment.if_ops.includes(o)));
  if (asks && !there.has(alignment.op)) say("alignment missing");
  const known = new Set((model.instance.kits ?? []).map((k) => k.id));
  for (const k of kits) if (!known.has(k)) say(`unknown kit ${k}`);
  const priced = model.priceVisit(t, replace, there, new Set(kits));
  const slack = exact("0.000001");
  const { bay_hours: hours, budget } = model.visit(t);
  if (hours != null && isMore(priced.hours, plus(exact(hours), slack)))
    say(`${toNumber(priced.hours)} h over the limit`);
  if (budget != null && isMore(priced.spend, plus(exact(budget), slack)))
    say(`${toNumber(priced.spend)} over the budget`);
  if (Math.abs(choice.hours - toNumber(priced.hours)) > 1e-9) say("hours stated wrongly");
  if (Math.abs(choice.spend - toNumber(priced.spend)) > 1e-9) say("spend stated wrongly");
  return { cents: priced.cents, wrong };
}
