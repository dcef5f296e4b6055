import {
  type AlignmentTarget,
  type AxleName,
  type Family,
  type FamilyWork,
  type ReadingPlace,
  readingPlaces,
  type Side,
} from "#vehicle";
import { judgePlace } from "../cases/judge-place.ts";
import type { StoredLook } from "../cases/look.ts";
import type { PlaceFinding, Reason } from "../cases/place-finding.ts";
import { groupByPlace, type PlaceLooks } from "../cases/place-looks.ts";
import { shownValue } from "../cases/reading-reasons.ts";
import { twinPlace } from "../cases/twin-place.ts";
import { type CarriedWheel, carriedWords, carryTargets, unsureByCarrying } from "./carry-targets.ts";
import { computeAxleAngles, judgeAxle } from "./judge-axle.ts";
import { limitsAtHeight } from "./limits-at-height.ts";
import { apartOnFile, heightOnFile, targetOf } from "./targets-on-file.ts";

/** What the readings of a visit are judged by. */
export interface ReadingsOfVisit {
  readonly looks: readonly StoredLook[];
  /** Looks of the visits before; the last of each place counts. */
  readonly past: readonly StoredLook[];
  readonly family: Family;
  readonly work: FamilyWork;
  /** Whether the car stood settled when its heights were read; null: nobody said. */
  readonly settled: boolean | null;
  readonly confidence: number;
}

const NOT_SETTLED = "Read before the car had settled: not known. Roll it, bounce it and read the heights again.";
const SETTLED_UNSAID = "Nobody has said whether the car had settled: not known until somebody does.";

/** Heights, pressures and alignment judged wheel by wheel, then both wheels of an axle; what was not read is left out. */
export function judgeReadings(visit: ReadingsOfVisit): readonly PlaceFinding[] {
  const { family, work, settled, confidence } = visit;
  const here = groupByPlace(visit.looks);
  const before = groupByPlace(visit.past);
  const carried = settled === true ? carriedOf(family, work, here) : new Map<AxleName, readonly CarriedWheel[]>();
  const wheelOf = ({ axle, side }: ReadingPlace): CarriedWheel | undefined =>
    carried.get(axle)?.find((wheel) => wheel.side === side);
  const judge = (place: ReadingPlace): PlaceFinding[] => {
    const looks = here.get(place.id);
    if (!looks?.seen) return [];
    // Of a car that has not settled neither side nor an earlier visit can be told apart.
    const isTold = place.kind !== "ride-height" || settled === true;
    const twin = isTold ? twinPlace(place.id) : null;
    const target = targetOf(work.alignment, place.axle);
    const wheel = wheelOf(place);
    const finding = judgePlace(looks, {
      position: place,
      limits: [...work.limits, ...limitsAtHeight(work.alignment, place.axle, wheel)],
      unsure: (quantity) => (quantity === "camber" || quantity === "toe" ? unsureByCarrying(wheel, quantity) : 0),
      twin: twin === null ? null : (here.get(twin) ?? null),
      past: isTold ? (before.get(place.id) ?? null) : null,
      confidence,
      apart: (quantity) => apartOnFile(target, quantity),
      onFile: (quantity) => (quantity === "ride-height" ? heightOnFile(target) : null),
    });
    return [isTold ? finding : notKnown(finding, settled)];
  };
  const wheels = readingPlaces.flatMap((place) => (place.side === null ? [] : judge(place)));
  const axles = (["front", "rear"] as const).flatMap((axle) => {
    const rim = family[axle].wheel.rimDiameter;
    const angles = computeAxleAngles(here.get(`${axle}-left/alignment`), here.get(`${axle}-right/alignment`), rim);
    return angles === null
      ? []
      : [judgeAxle(axle, angles, targetOf(work.alignment, axle), confidence, carried.get(axle))];
  });
  return [...wheels, ...axles].map((finding) =>
    finding.kind === "alignment"
      ? withCaveat(
          finding,
          heightCaveat(finding.axle, {
            wheels,
            here,
            settled,
            target: targetOf(work.alignment, finding.axle),
            carried: carried.get(finding.axle) ?? [],
          }),
        )
      : finding,
  );
}

/** A height that says nothing: it keeps what was read, and has no grade. */
function notKnown(finding: PlaceFinding, settled: boolean | null): PlaceFinding {
  const why = settled === false ? "read before the car had settled" : "nobody said whether the car had settled";
  const reason: Reason = {
    about: "ride-height",
    text: `${finding.found}, ${why}`,
    grade: 0,
    closeToCall: false,
    judgement: { against: "limit", decision: null, why },
    towards: null,
    limit: null,
  };
  const caveat = settled === false ? NOT_SETTLED : SETTLED_UNSAID;
  return {
    ...finding,
    grade: null,
    closeToCall: false,
    notKnown: true,
    reasons: [reason],
    limitWords: null,
    howSure: "Not known.",
    caveat,
  };
}

const withCaveat = (finding: PlaceFinding, caveat: string | null): PlaceFinding => ({ ...finding, caveat });

/** Hub centre to arch of each wheel of an axle that was read, metres. */
const heightsOf = (here: ReadonlyMap<string, PlaceLooks>, axle: AxleName): ReadonlyMap<Side, number> =>
  new Map(
    (["left", "right"] as const).flatMap((side) => {
      const read = here.get(`${axle}-${side}/ride-height`)?.readings.find((r) => r.quantity === "ride-height");
      return read === undefined ? [] : [[side, read.value] as const];
    }),
  );

/** By axle, the wheels whose angles were read at another height than their targets are set for. */
function carriedOf(
  family: Family,
  work: FamilyWork,
  here: ReadonlyMap<string, PlaceLooks>,
): ReadonlyMap<AxleName, readonly CarriedWheel[]> {
  const isRead = (axle: AxleName): boolean =>
    (["left", "right"] as const).some((side) => here.get(`${axle}-${side}/alignment`)?.seen === true);
  return new Map(
    (["front", "rear"] as const)
      .filter(isRead)
      .map(
        (axle) => [axle, carryTargets(family, axle, targetOf(work.alignment, axle), heightsOf(here, axle))] as const,
      ),
  );
}

interface AxleAtHeight {
  readonly wheels: readonly PlaceFinding[];
  readonly here: ReadonlyMap<string, PlaceLooks>;
  readonly settled: boolean | null;
  readonly target: AlignmentTarget | null;
  readonly carried: readonly CarriedWheel[];
}

/** At which height the angles of an axle were judged, where that is not as it should be; null where it is. */
function heightCaveat(axle: AxleName, { wheels, here, settled, target, carried }: AxleAtHeight): string | null {
  const heights = (["left", "right"] as const).map((side) => `${axle}-${side}/ride-height`);
  if (!heights.every((place) => here.get(place)?.seen))
    return "Heights were not read: angles belong to a height, so they are judged without it.";
  if (settled === false) return "Judged on heights that had not settled.";
  if (settled === null) return "Judged on heights of which nobody said whether the car had settled.";
  const off = wheels.filter((f) => heights.includes(f.place) && f.reasons.some(isBeyondLimit));
  const beyond =
    off.length === 0
      ? ""
      : `Judged at a height beyond its limit (${off.map((f) => `${f.side} ${f.found}`).join(", ")}): the height comes first.`;
  const words = [beyond, heightApartWords(heightsOf(here, axle), target, carried)].filter((part) => part !== "");
  return words.length === 0 ? null : words.join(" ");
}

/** That the targets hold for another height than the car stands at, and what was carried to it; "" where it stands as high. */
function heightApartWords(
  heights: ReadonlyMap<Side, number>,
  target: AlignmentTarget | null,
  carried: readonly CarriedWheel[],
): string {
  if (target === null || target.hubToArch === null || carried.length === 0) return "";
  const here = [...heights].map(([side, value]) => `${side} ${shownValue("ride-height", value)}`).join(", ");
  return `The targets are those of ${shownValue("ride-height", target.hubToArch)}; this car stands at ${here}. ${carriedWords(target, carried)}`;
}

const isBeyondLimit = ({ judgement }: Reason): boolean =>
  judgement?.against === "limit" && judgement.decision === "beyond";
