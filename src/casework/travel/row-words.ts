import { type Metres, mmFromMetres } from "#quantity";
import { type AxleLayout, axleAndSide } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import { SIGN_SURE, signProbability } from "../fault/settle.ts";
import { changeSizes } from "./change-words.ts";
import type { RubberRow, TravelChange, TravelRow, TravelSheetQuestion } from "./travel-sheet.ts";

const degrees = (value: number): string => `${formatNumber(Math.abs(value), 2)}°`;
/** "50 mm of bump". */
export const heightWords = ({ travel }: Pick<TravelChange, "travel">): string =>
  `${mmFromMetres(Math.abs(travel)).toFixed(0)} mm of ${travel > 0 ? "bump" : "droop"}`;

const directions = { toe: ["in", "out"], camber: ["top outward", "top inward"] } as const;

/** What one row says of toe and camber: each change whose sign is sure, and which are not. */
function describeRow(row: TravelRow): string {
  const said = (["camber", "toe"] as const).flatMap((key) =>
    row[key].map((change) => {
      if (!change.sure) return `at ${heightWords(change)} which way its ${key} goes is not sure`;
      return `at ${heightWords(change)} its ${key} goes ${degrees(change.value)} ${directions[key][change.value > 0 ? 0 : 1]}`;
    }),
  );
  return `${capital(row.words)}: ${said.join("; ")}.`;
}

/** With a capital letter. */
export const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** Sizes below this, degrees, would be printed as nought. */
const NOTHING = 0.005;
/** Heights are told apart no closer than this, metres. */
const SAME_HEIGHT = 1e-6;

/** What a torn, loose or firmer place does against the sound corner at one travel (metres), the force being the same. */
export function describeRubber(row: RubberRow, travel: Metres): string {
  const here = (key: "toe" | "camber") => row[key].find((change) => Math.abs(change.travel - travel) < SAME_HEIGHT);
  const said = (["toe", "camber"] as const).flatMap((key) => {
    const change = here(key);
    if (!change) return [];
    if (!change.sure) return [`which way its ${key} goes is not sure`];
    if (isNothing(change)) return [`its ${key} stays within 0.01°`];
    const way = directions[key][change.value > 0 ? 0 : 1];
    const { size, between } = changeSizes(change);
    return [`its ${key} goes ${size} further ${way} (${between})`];
  });
  if (said.length === 0) return `${capital(row.words)}: no balance at this travel.`;
  const where = Math.abs(travel) < SAME_HEIGHT ? "at ride height" : `at ${heightWords({ travel })}`;
  return `${capital(row.words)}: ${where}, against the sound corner under the same force, ${said.join("; ")}.`;
}

/** Would be printed as nought, its sign notwithstanding. */
export const isNothing = ({ value }: TravelChange): boolean => Math.abs(value) < NOTHING;

/** Changes of a whole corner in the order of travel, the one to the travel asked for among them. */
export function changesShown(row: TravelRow, key: "toe" | "camber"): readonly TravelChange[] {
  const shown = row.asked ? [...row[key], row.asked[key]] : row[key];
  return shown.toSorted((a, b) => a.travel - b.travel);
}

/** Changes of two corners at one height, and by how much the first is the larger in size. */
export interface ComparedChange {
  readonly key: "toe" | "camber";
  readonly one: TravelChange;
  readonly other: TravelChange;
  readonly difference: number;
  /** Which is the larger is 97.5 % sure, their bands taken as independent. */
  readonly sure: boolean;
}

/** The changes that two corners have at the same heights. */
export function compareChanges(key: "toe" | "camber", a: TravelRow, b: TravelRow): readonly ComparedChange[] {
  return a[key].flatMap((one) => {
    const other = b[key].find(({ travel }) => Math.sign(travel) === Math.sign(one.travel));
    if (!other || Math.abs(other.travel - one.travel) > 0.0005) return [];
    const difference = Math.abs(one.value) - Math.abs(other.value);
    const sure = signProbability(difference, Math.hypot(sdOf(one), sdOf(other))) >= SIGN_SURE;
    return [{ key, one, other, difference, sure }];
  });
}

/** What is asked of two corners at one height: "which of the two steers more at 50 mm of bump". */
export const comparedWords = ({ key, one }: ComparedChange): string =>
  `which of the two ${verbs[key]} more at ${heightWords(one)}`;

const verbs = { toe: "steers", camber: "changes its camber" } as const;

function sayComparison(compared: ComparedChange, a: TravelRow, b: TravelRow): string {
  const { key, one, other, difference, sure } = compared;
  if (!sure) return `${capital(comparedWords(compared))} is too close to call${against(one, other)}.`;
  const [more, less, large, small] = difference > 0 ? [a, b, one, other] : [b, a, other, one];
  return `At ${heightWords(one)} ${more.words} ${verbs[key]} more than ${less.words}${against(large, small)}.`;
}

const layoutNames: Readonly<Record<AxleLayout, string>> = {
  "five-link": "five-link",
  "double-wishbone": "double wishbone",
  strut: "strut",
  "trailing-arm": "trailing arm",
  bodies: "layout of several bodies",
};

/** "yes", "no" or "too close to call", by how sure the sign of a difference is. */
const verdict = (difference: number, sd: number): "yes" | "no" | null =>
  signProbability(difference, sd) < SIGN_SURE ? null : difference > 0 ? "yes" : "no";

/**
 * What a customer asks of two layouts: does the one lose less camber, and does it steer less over bumps? Lost camber is what
 * the body's lean takes and bump does not give back: the more a wheel leans inward in bump, the less it loses.
 */
function compareLayouts(a: TravelRow, b: TravelRow, layouts: readonly [AxleLayout, AxleLayout]): string[] {
  const [one, other] = [layoutNames[layouts[0]], layoutNames[layouts[1]]];
  if (one === other) return [];
  const bump = (row: TravelRow, key: "toe" | "camber") => row[key].find(({ travel }) => travel > 0);
  const [own, theirs] = [bump(a, "camber"), bump(b, "camber")];
  const camber = own && theirs ? verdict(theirs.value - own.value, Math.hypot(sdOf(own), sdOf(theirs))) : null;
  const steers = a.toe.flatMap((change) => {
    const against = b.toe.find(({ travel }) => Math.sign(travel) === Math.sign(change.travel));
    return against
      ? [verdict(Math.abs(against.value) - Math.abs(change.value), Math.hypot(sdOf(change), sdOf(against)))]
      : [];
  });
  const toe = steers.length > 0 && steers.every((said) => said === steers[0]) ? (steers[0] ?? null) : null;
  const answers: Readonly<Record<"yes" | "no", string>> = { yes: "Yes", no: "No" };
  const lean = ({ value }: TravelChange): string => `${degrees(value)} ${value < 0 ? "inward" : "outward"}`;
  const figures =
    own?.sure && theirs?.sure
      ? `: ${heightWords(own)} takes its top ${lean(own)}, that of the ${other} ${lean(theirs)}; what leans inward in bump makes up for the lean of the body`
      : "";
  const lost = camber === null ? "Too close to call" : `${answers[camber]}${figures}`;
  const turned =
    toe === null ? "Too close to call, bump and droop taken together" : `${answers[toe]}, in bump and in droop`;
  return [
    `Does the ${one} of ${a.words} lose less camber in a bend than the ${other} of ${b.words}? ${lost}.`,
    `Does it steer less over bumps? ${turned}.`,
  ];
}

/** Both figures where the signs of both are sure: one that is not is not printed anywhere. */
const against = (a: TravelChange, b: TravelChange): string =>
  a.sure && b.sure ? ` (${degrees(a.value)} against ${degrees(b.value)})` : "";

/** Standard deviation of a normal change from its 95 % band. */
const sdOf = ({ band }: TravelChange): number => (band[1] - band[0]) / (2 * 1.959963984540054);

/** The sound corner goes by the name of its car line. */
const named = ({ family }: TravelSheetQuestion, rows: readonly TravelRow[]): readonly TravelRow[] =>
  rows.map((row) => (row.subject === "sound" ? { ...row, words: family.name } : row));

/** What every whole corner does by itself, in plain words. */
export const describeRows = (question: TravelSheetQuestion, rows: readonly TravelRow[]): readonly string[] =>
  named(question, rows).map(describeRow);

/** Another car line against this one, in plain words; nothing where none stands beside. */
export function compareRows(question: TravelSheetQuestion, rows: readonly TravelRow[]): readonly string[] {
  const { family, corner, subjects } = question;
  const own = named(question, rows).find(({ subject }) => subject === "sound");
  const beside = rows.find(({ subject }) => subject === "beside");
  const other = subjects.find((subject) => subject.kind === "beside");
  if (!own || !beside || !other) return [];
  const { axle } = axleAndSide(corner);
  return [
    ...compareLayouts(own, beside, [family[axle].layout, other.family[axle].layout]),
    ...(["camber", "toe"] as const).flatMap((key) =>
      compareChanges(key, own, beside).map((compared) => sayComparison(compared, own, beside)),
    ),
  ];
}
