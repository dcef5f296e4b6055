import type { Finding } from "#numeric";
import { type Axle, type AxleName, idWithoutSide, type Position, positionsOfAxle } from "#vehicle";
import { findNearest } from "../edit-distance.ts";
import { axleSheet } from "./axle-schema.ts";
import { checkWork } from "./check-work.ts";
import { familyFinding } from "./family-finding.ts";
import { familyShape, practiceLife } from "./family-schema.ts";
import { asObject, type LooseAxle, understood } from "./loose-axle.ts";
import { readAxle } from "./read-axle.ts";

/** How far two shares may miss one (rounding to three places). */
const SHARE_TOLERANCE = 0.002;

/** What concerns the whole car: shares of the axles, years, lives, work. */
export function checkCar(
  raw: Readonly<Record<string, unknown>>,
  axles: readonly LooseAxle[],
  soundSoFar: boolean,
): Finding[] {
  const positions = soundSoFar ? knownPositions(axles) : null;
  return [
    ...years(raw),
    ...shares(axles),
    ...lives(raw, positions && new Set(positions.map(idWithoutSide))),
    ...checkWork(raw, positions),
  ];
}

/** The subframe whole or by halves, not both. */
export function checkSubframe(axle: LooseAxle): Finding[] {
  return axle.raw.subframe_mm !== undefined && axle.raw.subframe_half_mm !== undefined
    ? [
        familyFinding(
          "two-forms-of-subframe",
          `${axle.name}.subframe_half_mm`,
          axle.raw.subframe_half_mm,
          "either subframe_mm or subframe_half_mm",
          "Leave one of the two out.",
        ),
      ]
    : [];
}

function years(raw: Readonly<Record<string, unknown>>): Finding[] {
  const from = understood(familyShape.from_year.unwrap(), raw.from_year);
  const to = understood(familyShape.to_year.unwrap(), raw.to_year);
  return from !== undefined && to !== undefined && to < from
    ? [familyFinding("years-reversed", "to_year", to, `${from} or later`, "Swap the two.")]
    : [];
}

function shares(axles: readonly LooseAxle[]): Finding[] {
  const found: Finding[] = [];
  for (const key of ["brake_share", "drive_share"] as const) {
    const [front, rear] = axles.map(({ raw }) => raw[key]);
    if (typeof front !== "number" || typeof rear !== "number" || !isShare(front) || !isShare(rear)) continue;
    if (Math.abs(front + rear - 1) > SHARE_TOLERANCE) {
      found.push(
        familyFinding(
          "shares-not-one",
          `rear.${key}`,
          rear,
          `${Number((1 - front).toFixed(3))}, the rest of ${front} at the front`,
          "The shares of both axles add to 1.",
        ),
      );
    }
  }
  for (const { name, raw } of axles) {
    if (typeof raw.driven !== "boolean" || typeof raw.drive_share !== "number" || !isShare(raw.drive_share)) continue;
    if (raw.driven !== raw.drive_share > 0) {
      found.push(
        familyFinding(
          "drive-share-against-driven",
          `${name}.driven`,
          raw.driven,
          `${!raw.driven}, as its drive_share is ${raw.drive_share}`,
          "An axle with a share of the drive is driven.",
        ),
      );
    }
  }
  return found;
}

function isShare(value: number): boolean {
  return value >= 0 && value <= 1;
}

/** Every position, where both axles can be understood; else null. */
function knownPositions(axles: readonly LooseAxle[]): readonly Position[] | null {
  const read: Axle[] = [];
  for (const { name, raw } of axles) {
    const sheet = understood(axleSheet, raw);
    if (sheet === undefined) return null;
    read.push(readAxle(name satisfies AxleName, sheet));
  }
  return read.flatMap(positionsOfAxle);
}

function lives(raw: Readonly<Record<string, unknown>>, known: ReadonlySet<string> | null): Finding[] {
  const entries: unknown[] = Array.isArray(raw.life) ? raw.life : [];
  const first = new Map<string, number>();
  return entries.flatMap((entry, index) => {
    const path = `life[${index}]`;
    const found: Finding[] = [];
    const { position } = asObject(entry);
    if (typeof position === "string") {
      const before = first.get(position);
      if (before !== undefined) {
        found.push(
          familyFinding(
            "duplicate-life",
            `${path}.position`,
            position,
            `a position of its own; life[${before}] has this one`,
            "One band per position.",
          ),
        );
      } else first.set(position, index);
      if (known && !known.has(position)) {
        const nearest = findNearest(position, [...known]);
        const hint =
          nearest === null ? "Positions are named axle/item/detail, without a side." : `The nearest is ${nearest}.`;
        found.push(
          familyFinding(
            "unknown-position",
            `${path}.position`,
            position,
            "a position of this family, without its side",
            hint,
          ),
        );
      }
    }
    const life = understood(practiceLife, entry);
    if (life && !(life.low_km < life.middle_km)) {
      found.push(
        familyFinding(
          "life-band-not-rising",
          `${path}.middle_km`,
          life.middle_km,
          `more than low_km, ${life.low_km}`,
          "Low, middle and high rise.",
        ),
      );
    } else if (life && !(life.middle_km < life.high_km)) {
      found.push(
        familyFinding(
          "life-band-not-rising",
          `${path}.high_km`,
          life.high_km,
          `more than middle_km, ${life.middle_km}`,
          "Low, middle and high rise.",
        ),
      );
    }
    return found;
  });
}
