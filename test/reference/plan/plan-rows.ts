import loadHighs from "highs";
import { askDoor, doorsWith } from "#contract";
import { highsSolver } from "#engines/planning";
import { absolute, type Row, Score } from "../score.ts";
import { checkAnswer } from "./check-answer.ts";
import { type AnswerRecord, type ExpectedRecord, readExpected, readInstance } from "./instance-record.ts";

const doors = doorsWith(highsSolver(await loadHighs()));

/** Instances that are solved in about a second on a small machine; o6 and o7 take some ten seconds to a minute. */
const quickInstances = [
  "o1_tiny_two_visits",
  "o2_tiny_kit",
  "o3_tiny_strut_access",
  "o4_tiny_upgrade",
  "o5_small_front",
  "o8_infeasible_hours",
  "o9_large_no_caps",
] as const;

/** Asks the planning door; throws where it refuses. */
export function askPlan(instance: object): AnswerRecord & Readonly<Record<string, unknown>> {
  const answer = askDoor("planning.solve", instance, doors);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output as AnswerRecord & Readonly<Record<string, unknown>>;
}

/** Findings of the planning door; none where it answers. */
export function refusePlan(instance: unknown) {
  const answer = askDoor("planning.solve", instance, doors);
  return "findings" in answer ? answer.findings : [];
}

const sorted = (names: readonly string[]): string => [...names].sort().join(" ");

/** The listed plan: what is renewed at every visit, with which operations and kits. */
function isListedPlan(answer: AnswerRecord, expected: ExpectedRecord): boolean {
  const used = (expected.visits_of_that_plan ?? []).filter((v) => v.replace.length > 0);
  const details = (v: { replace: readonly string[]; operations: readonly string[]; kits: readonly string[] }): string =>
    [v.replace, v.operations, v.kits].map(sorted).join(" | ");
  return (
    used.length === answer.choices.length &&
    used.every((v) => answer.choices.some((c) => c.visit === v.visit && details(c) === details(v)))
  );
}

/** Every figure of the planning door against the proved optima of the named instances. */
export function scorePlans(names: readonly string[] = quickInstances): readonly Row[] {
  const expectedAll = readExpected();
  const score = new Score("planning.solve", "planning-reference");
  for (const name of names) {
    const instance = readInstance(name);
    const expected = expectedAll[name];
    if (!expected) throw new Error(`no expected answer of ${name}`);
    const answer = askPlan(instance);
    score.agree("status", answer.status === expected.verdict);
    if (expected.verdict === "infeasible" || expected.optimum === undefined) {
      score.agree(
        "no plan where none exists",
        answer.cost === null && answer.bound === null && answer.choices.length === 0,
      );
      continue;
    }
    const { cents, wrong } = checkAnswer(instance, answer);
    score.compare("cost", answer.cost, expected.optimum, absolute(0.001));
    score.compare("bound", answer.bound, expected.optimum, absolute(0.001));
    score.compare("cost summed again from its choices, exact decimals", cents / 100, expected.optimum, absolute(0.001));
    score.agree("rules kept, hours and spend as stated", wrong.length === 0);
    if (expected.plan_unique && expected.visit_details_unique)
      score.agree("the only cheapest plan, operations and kits", isListedPlan(answer, expected));
  }
  return score.rows();
}
