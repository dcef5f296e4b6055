import { mmFromMetres } from "#quantity";
import { axleAndSide, type LayoutName } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import { SIGN_SURE, signProbability } from "../fault/settle.ts";
import type { TravelChange, TravelRow, TravelSheetQuestion } from "./travel-sheet.ts";

const degrees = (value: number): string => `${formatNumber(Math.abs(value), 2)}°`;
const height = ({ travel }: TravelChange): string =>
  `${mmFromMetres(Math.abs(travel)).toFixed(0)} mm of ${travel > 0 ? "bump" : "droop"}`;

const directions = { toe: ["in", "out"], camber: ["top outward", "top inward"] } as const;

/** What one row says of toe and camber: each change whose sign is sure, and which are not. */
function describeRow(row: TravelRow): string {
  const said = (["camber", "toe"] as const).flatMap((key) =>
    row[key].map((change) => {
      if (!change.sure) return `at ${height(change)} which way its ${key} goes is not sure`;
      return `at ${height(change)} its ${key} goes ${degrees(change.value)} ${directions[key][change.value > 0 ? 0 : 1]}`;
    }),
  );
  return `${row.words}: ${said.join("; ")}.`;
}

/** The larger of two changes in size, where that is sure: their bands taken as independent. */
function compareChange(key: "toe" | "camber", a: TravelRow, b: TravelRow): string[] {
  return a[key].flatMap((one) => {
    const other = b[key].find(({ travel }) => Math.sign(travel) === Math.sign(one.travel));
    if (!other || Math.abs(other.travel - one.travel) > 0.0005) return [];
    const verb = key === "toe" ? "steers" : "changes its camber";
    const difference = Math.abs(one.value) - Math.abs(other.value);
    const sd = Math.hypot(sdOf(one), sdOf(other));
    if (signProbability(difference, sd) < SIGN_SURE)
      return [`Which of the two ${verb} more at ${height(one)} is too close to call${against(one, other)}.`];
    const [more, less, large, small] = difference > 0 ? [a, b, one, other] : [b, a, other, one];
    return [`At ${height(one)} ${more.words} ${verb} more than ${less.words}${against(large, small)}.`];
  });
}

const layoutNames: Readonly<Record<LayoutName, string>> = {
  "five-link": "five-link",
  "double-wishbone": "double wishbone",
  strut: "strut",
  "trailing-arm": "trailing arm",
};

/** "yes", "no" or "too close to call", by how sure the sign of a difference is. */
const verdict = (difference: number, sd: number): "yes" | "no" | null =>
  signProbability(difference, sd) < SIGN_SURE ? null : difference > 0 ? "yes" : "no";

/**
 * What a customer asks of two layouts: does the one lose less camber, and does it steer less over bumps? Lost camber is what
 * the body's lean takes and bump does not give back: the more a wheel leans inward in bump, the less it loses.
 */
function compareLayouts(a: TravelRow, b: TravelRow, layouts: readonly [LayoutName, LayoutName]): string[] {
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
      ? `: ${height(own)} takes its top ${lean(own)}, that of the ${other} ${lean(theirs)}; what leans inward in bump makes up for the lean of the body`
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

/** What the lines say in plain words: every sound corner by itself, and another car line against this one. */
export function compareRows(
  { family, corner, subjects }: TravelSheetQuestion,
  rows: readonly TravelRow[],
): readonly string[] {
  const named = rows.map((row) => (row.subject === "sound" ? { ...row, words: family.name } : row));
  const own = named.find(({ subject }) => subject === "sound");
  const beside = named.find(({ subject }) => subject === "beside");
  const other = subjects.find((subject) => subject.kind === "beside");
  const { axle } = axleAndSide(corner);
  return [
    ...named.map(describeRow),
    ...(own && beside && other ? compareLayouts(own, beside, [family[axle].layout, other.family[axle].layout]) : []),
    ...(own && beside ? [...compareChange("camber", own, beside), ...compareChange("toe", own, beside)] : []),
  ];
}
