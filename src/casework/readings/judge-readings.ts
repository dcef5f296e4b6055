import {
  type AlignmentTarget,
  type AxleName,
  type Family,
  type FamilyWork,
  type ReadingPlace,
  readingPlaces,
} from "#vehicle";
import { judgePlace } from "../cases/judge-place.ts";
import type { StoredLook } from "../cases/look.ts";
import type { PlaceFinding, Reason } from "../cases/place-finding.ts";
import { groupByPlace, type PlaceLooks } from "../cases/place-looks.ts";
import { shownValue } from "../cases/reading-reasons.ts";
import { twinPlace } from "../cases/twin-place.ts";
import { computeAxleAngles, judgeAxle } from "./judge-axle.ts";
import { apartOnFile, heightOnFile, limitsOfTargets, targetOf } from "./targets-on-file.ts";

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
  const limits = [...work.limits, ...limitsOfTargets(work.alignment)];
  const judge = (place: ReadingPlace): PlaceFinding[] => {
    const looks = here.get(place.id);
    if (!looks?.seen) return [];
    const twin = twinPlace(place.id);
    const target = targetOf(work.alignment, place.axle);
    const finding = judgePlace(looks, {
      position: place,
      limits,
      twin: twin === null ? null : (here.get(twin) ?? null),
      past: before.get(place.id) ?? null,
      confidence,
      apart: (quantity) => apartOnFile(target, quantity),
      onFile: (quantity) => (quantity === "ride-height" ? heightOnFile(target) : null),
    });
    return [place.kind === "ride-height" && settled !== true ? notKnown(finding, settled) : finding];
  };
  const wheels = readingPlaces.flatMap((place) => (place.side === null ? [] : judge(place)));
  const axles = (["front", "rear"] as const).flatMap((axle) => {
    const rim = family[axle].wheel.rimDiameter;
    const angles = computeAxleAngles(here.get(`${axle}-left/alignment`), here.get(`${axle}-right/alignment`), rim);
    return angles === null ? [] : [judgeAxle(axle, angles, targetOf(work.alignment, axle), confidence)];
  });
  return [...wheels, ...axles].map((finding) =>
    finding.kind === "alignment"
      ? withCaveat(finding, heightCaveat(finding.axle, wheels, here, settled, targetOf(work.alignment, finding.axle)))
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

/** At which height the angles of an axle were judged, where that is not as it should be; null where it is. */
function heightCaveat(
  axle: AxleName,
  wheels: readonly PlaceFinding[],
  here: ReadonlyMap<string, PlaceLooks>,
  settled: boolean | null,
  target: AlignmentTarget | null,
): string | null {
  const heights = (["left", "right"] as const).map((side) => `${axle}-${side}/ride-height`);
  if (!heights.every((place) => here.get(place)?.seen))
    return "Heights were not read: angles belong to a height, so they are judged without it.";
  if (settled === false) return "Judged on heights that had not settled.";
  if (settled === null) return "Judged on heights of which nobody said whether the car had settled.";
  const off = wheels.filter((f) => heights.includes(f.place) && f.reasons.some(isBeyondLimit));
  return off.length === 0
    ? heightApartWords(
        wheels.filter((f) => heights.includes(f.place)),
        target,
      )
    : `Judged at a height beyond its limit (${off.map((f) => `${f.side} ${f.found}`).join(", ")}): the height comes first.`;
}

/** Nearer to the height of the targets than this the angles are taken as those of that height, m (common practice, no source). */
const SAME_HEIGHT = 0.005;

/** That the targets hold for another height than the car stands at; null where it stands as high, or no target has one. */
function heightApartWords(wheels: readonly PlaceFinding[], target: AlignmentTarget | null): string | null {
  const height = target?.hubToArch ?? null;
  const stands = wheels.flatMap(({ side, looks }) =>
    (looks?.readings ?? []).flatMap((r) => (r.quantity === "ride-height" ? [{ side, value: r.value }] : [])),
  );
  if (height === null || stands.every(({ value }) => Math.abs(value - height) <= SAME_HEIGHT)) return null;
  const here = stands.map(({ side, value }) => `${side} ${shownValue("ride-height", value)}`).join(", ");
  return `The targets are those of ${shownValue("ride-height", height)}; this car stands at ${here}, and they are not carried to that height.`;
}

const isBeyondLimit = ({ judgement }: Reason): boolean =>
  judgement?.against === "limit" && judgement.decision === "beyond";
