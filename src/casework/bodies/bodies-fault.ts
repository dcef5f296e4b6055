import type { LayoutFault } from "#engines/linkage";
import type { Finding } from "#numeric";
import type { BodiesFault, BodiesFile, RubberPlace } from "../bodies.ts";
import { checkFirmer, firmnessOf } from "../fault/firmer-rubber.ts";
import type { Firmness } from "../fault-effect.ts";

/** A fault as the balance takes it: in the middle, and at both ends where it is a range. */
export interface SpannedFault {
  readonly middle: readonly LayoutFault[];
  readonly ends: readonly (readonly LayoutFault[])[];
}

/** A fault with its range: torn over the share of the file (its middle between), firmer over what was said or its hardness means. */
export function spanFault({ tornShare }: BodiesFile, fault: BodiesFault | null): SpannedFault {
  if (fault === null) return { middle: [], ends: [] };
  if (fault.kind === "loose") return { middle: [{ kind: "play", part: fault.part, total: fault.play }], ends: [] };
  const soft = (factor: number): readonly LayoutFault[] => [{ kind: "soft", ...fault.place, factor }];
  if (fault.kind === "torn") {
    const { low, high } = tornShare;
    return { middle: soft((low + high) / 2), ends: [soft(low), soft(high)] };
  }
  const firmness = layoutFirmness(fault);
  if (firmness) return { middle: soft(firmness.factor), ends: [soft(firmness.low), soft(firmness.high)] };
  // A hardness that says nothing was refused before: the place is left as it is.
  if ("hardness" in fault) return { middle: [], ends: [] };
  const { low, high } = fault;
  return { middle: soft(Math.sqrt(low * high)), ends: low === high ? [] : [soft(low), soft(high)] };
}

/** How firm a part told by its hardness is; null of every other fault, and where its hardness cannot be used. */
export const layoutFirmness = (fault: BodiesFault | null): Firmness | null =>
  fault !== null && "hardness" in fault ? firmnessOf({ kind: "firmer", hardness: fault.hardness }, null) : null;

/** The rubber a fault sits in or (loose) the whole part, for the drawing. */
export const placeOfFault = (fault: BodiesFault): RubberPlace =>
  fault.kind === "loose" ? { part: fault.part, end: null } : fault.place;

/** Whether a place with a rate is a ball and no bush: equally stiff in every direction, no part of rubber. */
export function isBall({ layout, elasticity }: Pick<BodiesFile, "layout" | "elasticity">, place: RubberPlace): boolean {
  if (place.end === null) return layout.joints.some(({ name, kind }) => name === place.part && kind === "ball");
  return elasticity.rubber.some(({ part, end, rate }) => part === place.part && end === place.end && !rate.axis);
}

const noHardness = (place: string): Finding => ({
  code: "no-rubber-here",
  path: "fault.hardness.to",
  got: `a hardness at ${place}`,
  needed: "a part of rubber, which has an axis",
  hint: "A ball joint has no hardness of rubber; give how many times its rate is.",
});

const finding = (path: string, got: string, needed: string, hint: string): Finding => ({
  code: "unknown-name",
  path,
  got,
  needed,
  hint,
});

/** What is wrong with a fault of this file: a place without rubber, a part that is not there, amounts that are none. */
export function checkBodiesFault({ layout, elasticity }: BodiesFile, fault: BodiesFault | null): readonly Finding[] {
  if (fault === null) return [];
  if (fault.kind === "loose") {
    const known = [...layout.joints, ...layout.links].map(({ name }) => name);
    const found = known.includes(fault.part)
      ? []
      : [
          finding(
            "fault.part",
            fault.part,
            `a joint or link of the file: ${known.join(", ")}`,
            "Only what the file lists can be loose.",
          ),
        ];
    if (fault.play > 0) return found;
    return [
      ...found,
      {
        code: "out-of-range",
        path: "fault.play",
        got: String(fault.play * 1000),
        needed: "a play above 0 mm",
        hint: "Without play it is not loose.",
      },
    ];
  }
  const { part, end } = fault.place;
  const key = (place: RubberPlace): string => (place.end === null ? place.part : `${place.part}.${place.end}`);
  const places = elasticity.rubber.map(key);
  const found = places.includes(key({ part, end }))
    ? []
    : [
        finding(
          "fault.part",
          key({ part, end }),
          `a place with rubber: ${places.join(", ") || "the file lists none"}`,
          "What is not listed as rubber is rigid: nothing there can be torn or firmer.",
        ),
      ];
  if (fault.kind === "torn") return found;
  if ("hardness" in fault)
    return [
      ...found,
      ...(isBall({ layout, elasticity }, fault.place) ? [noHardness(key({ part, end }))] : []),
      ...checkFirmer({ kind: "firmer", hardness: fault.hardness }, null),
    ];
  if (fault.low > 0 && fault.low <= fault.high) return found;
  return [
    ...found,
    {
      code: "not-consistent",
      path: "fault.low",
      got: `${fault.low} to ${fault.high}`,
      needed: "two factors above 0, the lower one first",
      hint: "A firmer rubber is told by how many times the sound rates, at least and at most.",
    },
  ];
}
