import { mmFromMetres } from "#quantity";
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

/** Both figures where the signs of both are sure: one that is not is not printed anywhere. */
const against = (a: TravelChange, b: TravelChange): string =>
  a.sure && b.sure ? ` (${degrees(a.value)} against ${degrees(b.value)})` : "";

/** Standard deviation of a normal change from its 95 % band. */
const sdOf = ({ band }: TravelChange): number => (band[1] - band[0]) / (2 * 1.959963984540054);

/** What the lines say in plain words: every sound corner by itself, and another car line against this one. */
export function compareRows({ family }: TravelSheetQuestion, rows: readonly TravelRow[]): readonly string[] {
  const named = rows.map((row) => (row.subject === "sound" ? { ...row, words: family.name } : row));
  const own = named.find(({ subject }) => subject === "sound");
  const beside = named.find(({ subject }) => subject === "beside");
  return [
    ...named.map(describeRow),
    ...(own && beside ? [...compareChange("camber", own, beside), ...compareChange("toe", own, beside)] : []),
  ];
}
