import { computeAxleToe } from "#engines/alignment";
import type { OwnedLimits } from "#engines/metrology";
import type { Metres, Radians } from "#quantity";
import { type AlignmentTarget, findReadingPlace, type Grade } from "#vehicle";
import { weighReasons } from "../cases/judge-place.ts";
import type { PlaceFinding, Reason } from "../cases/place-finding.ts";
import type { PlaceLooks } from "../cases/place-looks.ts";
import { limitReason, notOnFile, ownerWords, type Summary, shownValue, summarise } from "../cases/reading-reasons.ts";
import { type CarriedWheel, carryTotalToe } from "./carry-targets.ts";

const GRADE_BEYOND_TARGET = 2 satisfies Grade;
const MM = 1000;

/** What both wheels of an axle say together. */
export interface AxleAngles {
  readonly total: Radians;
  readonly totalU: Radians;
  /** Total toe as a length over the rim. */
  readonly length: Metres;
  readonly rim: Metres;
  /** Where the axle points, positive to the left. */
  readonly thrust: Radians;
  readonly thrustU: Radians;
  readonly loadState: string | null;
}

const toeOf = (looks: PlaceLooks | undefined): Summary | undefined =>
  summarise(looks?.readings ?? []).find((r) => r.quantity === "toe");

/** Total toe and thrust of an axle from the single toes of its wheels; null where one is missing or was read in another state of load. */
export function computeAxleAngles(
  left: PlaceLooks | undefined,
  right: PlaceLooks | undefined,
  rim: Metres,
): AxleAngles | null {
  const [a, b] = [toeOf(left), toeOf(right)];
  if (!a || !b || a.loadState !== b.loadState) return null;
  const { total, totalLength, thrust } = computeAxleToe(a.value, b.value, rim);
  const totalU = Math.hypot(a.u, b.u);
  return { total, totalU, length: totalLength, rim, thrust, thrustU: totalU / 2, loadState: a.loadState };
}

/** Where an axle points: "0.10° to the left", "straight ahead" where the digits shown say nothing else. */
export function thrustWords(thrust: Radians): string {
  const size = shownValue("toe", Math.abs(thrust));
  if (Number.parseFloat(size) === 0) return "straight ahead";
  return `${size} to the ${thrust > 0 ? "left" : "right"}`;
}

/** Total toe with its length and the rim it was taken over: "0.12°, 0.9 mm over a rim of 432 mm". */
export const totalToeWords = ({ total, length, rim }: Pick<AxleAngles, "total" | "length" | "rim">): string =>
  `${shownValue("toe", total)}, ${(length * MM).toFixed(1)} mm over a rim of ${(rim * MM).toFixed(0)} mm`;

/**
 * Total toe and, at the rear, the thrust of an axle, judged by what is on file.
 * @param carried wheels that stand at another height than the target is set for
 */
export function judgeAxle(
  axle: "front" | "rear",
  angles: AxleAngles,
  target: AlignmentTarget | null,
  confidence: number,
  carried: readonly CarriedWheel[] = [],
): PlaceFinding {
  const place = findReadingPlace(`${axle}/alignment`);
  if (place === null) throw new RangeError(`no place for the alignment of the ${axle} axle`);
  const reasons = [
    totalReason(angles, target, confidence, carryTotalToe(carried)),
    ...(axle === "rear" ? [thrustReason(angles, target, confidence)] : []),
  ];
  return {
    place: place.id,
    label: place.label,
    axle,
    side: null,
    kind: place.kind,
    ...weighReasons(reasons),
    found: [
      `total toe ${totalToeWords(angles)}`,
      ...(axle === "rear" ? [`the axle points ${thrustWords(angles.thrust)}`] : []),
    ].join("; "),
    looks: null,
  };
}

function totalReason(
  angles: AxleAngles,
  target: AlignmentTarget | null,
  confidence: number,
  carried: ReturnType<typeof carryTotalToe>,
): Reason {
  const shown = `total toe ${shownValue("toe", angles.total)}`;
  if (!target?.toe) return notOnFile("total-toe", shown, null);
  const { by, sd } = carried;
  const [lower, upper] = [2 * target.toe[0] + by, 2 * target.toe[1] + by];
  const words = `limit ${shownValue("toe", lower)} to ${shownValue("toe", upper)}, twice what is on file for one wheel, ${ownerWords[target.owner]}${by === 0 ? "" : ", carried to the height it stands at"}`;
  const reading = { value: angles.total, u: Math.hypot(angles.totalU, sd), loadState: angles.loadState };
  return limitReason("total-toe", shown, reading, { ...limitOf(target, lower, upper), words }, confidence);
}

function thrustReason(angles: AxleAngles, target: AlignmentTarget | null, confidence: number): Reason {
  const shown = `the axle points ${thrustWords(angles.thrust)}`;
  if (!target || target.thrust === null) return notOnFile("thrust", shown, null);
  const words = `limit ${shownValue("toe", target.thrust)} to either side, ${ownerWords[target.owner]}`;
  const reading = { value: angles.thrust, u: angles.thrustU, loadState: angles.loadState };
  const limit = limitOf(target, -target.thrust, target.thrust);
  return limitReason("thrust", shown, reading, { ...limit, words }, confidence);
}

const limitOf = ({ owner, source }: AlignmentTarget, lower: number, upper: number): OwnedLimits => ({
  lower,
  upper,
  owner,
  source,
  loadState: "standing",
  grade: GRADE_BEYOND_TARGET,
});
