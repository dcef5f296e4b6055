import { metresFromMm, radiansFromDegrees } from "#quantity";
import type { AlignmentTarget, FamilyWork, FastenerUse, Limit, Operation } from "#vehicle";
import { readingUnits } from "../cases/reading-unit.ts";
import type { LimitSheet, WorkSheet } from "./work-schema.ts";
import { gradeNames, lowerKey, upperKey } from "./work-units.ts";

type Listed<K extends keyof WorkSheet> = NonNullable<WorkSheet[K]>[number];

/** What a checked sheet says of the work, as the program uses it; lists that are left out are empty. */
export function readWork(sheet: WorkSheet): FamilyWork {
  return {
    origin: "family",
    limits: (sheet.limits ?? []).map(readLimit),
    access: sheet.access ?? [],
    operations: (sheet.operations ?? []).map(readOperation),
    remedies: (sheet.remedies ?? []).map((remedy) => ({
      id: remedy.id,
      label: remedy.label,
      axle: remedy.axle ?? null,
      cures: remedy.cures,
      operations: remedy.operations,
      parts: remedy.parts ?? [],
      pair: remedy.pair ?? false,
    })),
    parts: (sheet.parts ?? []).map((part) => ({
      id: part.id,
      label: part.label,
      priceCents: part.price_cents ?? null,
      kind: part.kind,
      contents: part.contents ?? [],
    })),
    knownFaults: (sheet.known_faults ?? []).map(({ how_to_see, prior_factor, ...fault }) => ({
      ...fault,
      howToSee: how_to_see,
      priorFactor: prior_factor,
    })),
    alignment: (sheet.alignment ?? []).map(readTarget),
  };
}

function readLimit(sheet: LimitSheet): Limit {
  const { toInside } = readingUnits[sheet.quantity];
  const end = (value: unknown): number | null => (typeof value === "number" ? toInside(value) : null);
  const grade = ([1, 2, 3, 4] as const).find((one) => gradeNames[one] === sheet.grade) ?? 1;
  return {
    place: sheet.place,
    axle: sheet.axle ?? null,
    quantity: sheet.quantity,
    lower: end(sheet[lowerKey(sheet.quantity)]),
    upper: end(sheet[upperKey(sheet.quantity)]),
    loadState: sheet.load_state ?? null,
    owner: sheet.owner,
    source: sheet.source,
    grade,
  };
}

function readOperation(sheet: Listed<"operations">): Operation {
  return {
    id: sheet.id,
    label: sheet.label,
    hours: sheet.hours,
    scope: sheet.scope,
    phase: sheet.phase,
    access: sheet.access ?? [],
    fasteners: (sheet.fasteners ?? []).map(readFastener),
    support: sheet.support ?? "",
    cautions: sheet.cautions ?? [],
    loosens: sheet.loosens ?? [],
    needsAlignment: sheet.needs_alignment ?? false,
    source: sheet.source,
  };
}

function readFastener(sheet: NonNullable<Listed<"operations">["fasteners"]>[number]): FastenerUse {
  return {
    item: sheet.item,
    label: sheet.label,
    count: sheet.count,
    policy: sheet.policy,
    locker: sheet.locker ?? "none",
    grease: sheet.grease ?? false,
    stages:
      sheet.stages?.map((stage) =>
        "torque_nm" in stage ? { torque: stage.torque_nm } : { angle: radiansFromDegrees(stage.angle_deg) },
      ) ?? null,
    owner: sheet.owner,
    source: sheet.source,
    atRideHeight: sheet.at_ride_height ?? false,
  };
}

const orNull = (value: number | null | undefined, read: (value: number) => number): number | null =>
  typeof value === "number" ? read(value) : null;

function readTarget(sheet: Listed<"alignment">): AlignmentTarget {
  const range = (deg: readonly [number, number] | null | undefined): readonly [number, number] | null =>
    deg ? [radiansFromDegrees(deg[0]), radiansFromDegrees(deg[1])] : null;
  return {
    axle: sheet.axle,
    camber: range(sheet.camber_deg),
    toe: range(sheet.toe_deg),
    caster: range(sheet.caster_deg),
    hubToArch: orNull(sheet.hub_to_arch_mm, metresFromMm),
    heightTolerance: orNull(sheet.height_tolerance_mm, metresFromMm),
    heightApart: orNull(sheet.height_apart_mm, metresFromMm),
    camberApart: orNull(sheet.camber_apart_deg, radiansFromDegrees),
    casterApart: orNull(sheet.caster_apart_deg, radiansFromDegrees),
    thrust: orNull(sheet.thrust_deg, radiansFromDegrees),
    owner: sheet.owner,
    source: sheet.source,
  };
}
