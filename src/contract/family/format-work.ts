import type { FamilyWork, FastenerUse, Limit } from "#vehicle";
import { readingUnits } from "../cases/reading-unit.ts";
import { exactDegrees, exactMm } from "./exact-figure.ts";
import type { LimitSheet, WorkSheet } from "./work-schema.ts";
import { gradeNames, lowerKey, upperKey } from "./work-units.ts";

type Listed<K extends keyof WorkSheet> = NonNullable<WorkSheet[K]>[number];

/** What is known of the work as a sheet writes it; readWork gives the same back, and what is blank is left out. */
export function formatWork(work: FamilyWork): WorkSheet {
  return {
    ...listed("limits", work.limits.map(formatLimit)),
    ...listed(
      "access",
      work.access.map((one) => ({ ...one })),
    ),
    ...listed(
      "operations",
      work.operations.map((one) => ({
        id: one.id,
        label: one.label,
        hours: one.hours,
        scope: one.scope,
        phase: one.phase,
        access: [...one.access],
        fasteners: one.fasteners.map(formatFastener),
        ...(one.support !== "" && { support: one.support }),
        cautions: [...one.cautions],
        loosens: [...one.loosens],
        needs_alignment: one.needsAlignment,
        source: one.source,
      })),
    ),
    ...listed(
      "remedies",
      work.remedies.map(({ axle, cures, operations, parts, ...one }) => ({
        ...one,
        ...(axle !== null && { axle }),
        cures: [...cures],
        operations: [...operations],
        parts: parts.map((part) => ({ ...part })),
      })),
    ),
    ...listed(
      "parts",
      work.parts.map(({ id, label, priceCents, kind, contents }) => ({
        id,
        label,
        ...(priceCents !== null && { price_cents: priceCents }),
        kind,
        ...(contents.length > 0 && { contents: contents.map((part) => ({ ...part })) }),
      })),
    ),
    ...listed(
      "known_faults",
      work.knownFaults.map(({ howToSee, priorFactor, ...fault }) => ({
        ...fault,
        how_to_see: howToSee,
        prior_factor: priorFactor,
      })),
    ),
    ...listed(
      "alignment",
      work.alignment.map((target) => ({
        axle: target.axle,
        ...degrees("camber_deg", target.camber),
        ...degrees("toe_deg", target.toe),
        ...degrees("caster_deg", target.caster),
        ...(target.hubToArch !== null && { hub_to_arch_mm: exactMm(target.hubToArch) }),
        ...(target.heightTolerance !== null && { height_tolerance_mm: exactMm(target.heightTolerance) }),
        ...(target.heightApart !== null && { height_apart_mm: exactMm(target.heightApart) }),
        ...(target.camberApart !== null && { camber_apart_deg: exactDegrees(target.camberApart) }),
        ...(target.casterApart !== null && { caster_apart_deg: exactDegrees(target.casterApart) }),
        ...(target.thrust !== null && { thrust_deg: exactDegrees(target.thrust) }),
        owner: target.owner,
        source: target.source,
      })),
    ),
  };
}

/** A list under its key; nothing at all where it is empty. */
function listed<K extends keyof WorkSheet>(
  key: K,
  list: WorkSheet[K] & readonly unknown[],
): Pick<WorkSheet, K> | object {
  return list.length > 0 ? { [key]: list } : {};
}

function degrees(key: string, range: readonly [number, number] | null): object {
  return range === null ? {} : { [key]: [exactDegrees(range[0]), exactDegrees(range[1])] };
}

function formatLimit(limit: Limit): LimitSheet {
  const { toOutside } = readingUnits[limit.quantity];
  return {
    place: limit.place,
    ...(limit.axle !== null && { axle: limit.axle }),
    quantity: limit.quantity,
    ...(limit.lower !== null && { [lowerKey(limit.quantity)]: toOutside(limit.lower) }),
    ...(limit.upper !== null && { [upperKey(limit.quantity)]: toOutside(limit.upper) }),
    ...(limit.loadState !== null && { load_state: limit.loadState }),
    owner: limit.owner,
    source: limit.source,
    grade: gradeNames[limit.grade],
  };
}

function formatFastener(use: FastenerUse): NonNullable<Listed<"operations">["fasteners"]>[number] {
  return {
    item: use.item,
    label: use.label,
    count: use.count,
    policy: use.policy,
    locker: use.locker,
    grease: use.grease,
    ...(use.stages !== null && {
      stages: use.stages.map((stage) =>
        "torque" in stage ? { torque_nm: stage.torque } : { angle_deg: exactDegrees(stage.angle) },
      ),
    }),
    owner: use.owner,
    source: use.source,
    at_ride_height: use.atRideHeight,
  };
}
