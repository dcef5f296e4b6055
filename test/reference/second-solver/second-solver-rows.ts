import loadHighs from "highs";
import { askDoor, doorsWith } from "#contract";
import { highsSolver } from "#engines/planning";
import { readReference } from "../linkage/corner-record.ts";
import { absolute, type Row, relative, relativeAboveOne, Score, type Tolerance } from "../score.ts";

interface Case {
  readonly door: string;
  readonly input: unknown;
  readonly output: Loose;
}
type Loose = Readonly<Record<string, unknown>>;

const SOURCE = "second solver";

const doors = doorsWith(highsSolver(await loadHighs()));

const isObject = (value: unknown): value is Loose =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Tolerance of a figure by its door and the keys that lead to it. */
function toleranceOf(door: string, keys: readonly string[]): Tolerance {
  const unit = keys.findLast((key) => /_(deg|mm|n)$/.test(key)) ?? "";
  const last = keys.at(-1) ?? "";
  switch (door) {
    case "linkage.travel":
      return last === "fold_travel_mm" || last === "binds_at_mm" ? absolute(1e-4) : relativeAboveOne(1e-9);
    case "linkage.compliance":
      if (keys[0] === "per_kn") return relativeAboveOne(1e-8);
      return absolute(unit.endsWith("_deg") ? 1e-9 : unit.endsWith("_mm") ? 1e-7 : 1e-5);
    case "linkage.band":
      if (/^(camber|toe)_change_deg$/.test(last)) return absolute(1e-9);
      if (last === "toe_sign_probability") return absolute(1e-8);
      if (last === "share") return absolute(1e-7);
      return relative(keys[0] === "difference" ? 1e-6 : 1e-7);
    case "rubber.hydraulic":
      if (keys.includes("peak_loss")) return last === "frequency_hz" ? absolute(1e-4) : relative(1e-8);
      if (keys.includes("worst") && last !== "order") return last === "mm" ? relative(1e-8) : absolute(1e-3);
      return relative(1e-9);
    case "rubber.rate":
      return relative(1e-9);
    case "planning.solve":
      return absolute(0.01);
    case "metrology.conformity":
      return last === "probability_within" ? absolute(1e-12) : relativeAboveOne(1e-9);
    default:
      return relativeAboveOne(1e-12);
  }
}

/** What a figure is called in the table: its key, with where it stands where keys repeat. */
function nameOf(keys: readonly string[]): string {
  const [first] = keys;
  if (first === "posterior") return first;
  const force = keys.find((key) => key === "link_force_n" || key === "mount_force_n");
  if (force) return force;
  const last = keys.at(-1) as string;
  const group = ["per_kn", "difference", "others", "peak_loss", "worst", "response"].find((key) => keys.includes(key));
  return group ? `${group}.${last}` : last;
}

const byToe = (list: unknown): unknown =>
  Array.isArray(list) ? [...(list as readonly Loose[])].sort((a, b) => Number(a.toe_deg) - Number(b.toe_deg)) : list;

/** Goes through an answer and the one wanted together: keys, order, words and nulls the same, figures near. */
function compare(score: Score, door: string, keys: readonly string[], got: unknown, want: unknown): void {
  if (Array.isArray(want)) {
    const list: readonly unknown[] = Array.isArray(got) ? got : [];
    score.agree("length and keys of every list and object", list.length === want.length);
    want.forEach((item, i) => {
      compare(score, door, keys, list[i], item);
    });
  } else if (isObject(want)) {
    const object = isObject(got) ? got : {};
    score.agree(
      "length and keys of every list and object",
      Object.keys(object).sort().join() === Object.keys(want).sort().join(),
    );
    for (const [key, value] of Object.entries(want)) {
      // Further balances stand in no order of their own.
      const inOrder = (list: unknown): unknown => (key === "others" ? byToe(list) : list);
      compare(score, door, [...keys, key], inOrder(object[key]), inOrder(value));
    }
  } else if (typeof want === "number") score.compare(nameOf(keys), got, want, toleranceOf(door, keys));
  else score.agree("words, signs of stability and nulls", got === want);
}

/** Position without what only the program says of itself: how far the joints are open. */
function withoutClosure(position: unknown): unknown {
  if (!isObject(position) || "refused" in position) return position;
  const { closure_mm: _, ...rest } = position;
  return rest;
}

function compareTravel(score: Score, got: Loose, want: Loose): void {
  const door = "linkage.travel";
  const positions = (got.positions as readonly unknown[]).map(withoutClosure);
  const wanted = want.positions as readonly Loose[];
  score.agree("a position is refused where the branch has ended", positions.length === wanted.length);
  wanted.forEach((one, i) => {
    const position = positions[i];
    if ("fold_travel_mm" in one) {
      const refused = isObject(position) && isObject(position.refused) ? position.refused : {};
      score.agree("a position is refused where the branch has ended", refused.code === "beyond-fold");
      score.compare("fold_travel_mm", refused.fold_travel_mm, one.fold_travel_mm as number, absolute(1e-4));
    } else compare(score, door, ["positions"], position, one);
  });
  compare(score, door, ["binds_at_mm"], (got.report as Loose).binds_at_mm, want.binds_at_mm);
}

function compareOne(score: Score, { door, input, output: want }: Case): void {
  const answer = askDoor(door, input, doors);
  if ("findings" in answer) throw new Error(`${door} refused: ${JSON.stringify(answer.findings)}`);
  const got = answer.output as Loose;
  if (door === "linkage.travel") compareTravel(score, got, want);
  else if (door === "planning.solve") {
    score.agree("status", got.status === want.status);
    if (want.cost === null) score.agree("no cost where there is no plan", got.cost === null && got.bound === null);
    else for (const key of ["cost", "bound"]) score.compare(key, got[key], want.cost as number, absolute(0.01));
  } else if (Array.isArray(want.states) && want.states[0] === "buckles") {
    const [state] = got.states as readonly Loose[];
    const refused = isObject(state?.refused) ? state.refused : {};
    score.agree("a corner that buckles is refused", refused.code === "no-equilibrium");
  } else compare(score, door, [], got, want);
}

/** All rows of the second solver, door by door. */
export function scoreSecondSolver(): readonly Row[] {
  const { cases } = readReference<{ readonly cases: readonly Case[] }>("second-solver/cases.json");
  const asked = [...new Set(cases.map(({ door }) => door))];
  return asked.flatMap((door) => {
    const score = new Score(`${door}, second solver`, SOURCE);
    for (const one of cases) if (one.door === door) compareOne(score, one);
    return score.rows();
  });
}
