import type { DocumentBodies, DocumentKind } from "#casework";
import { type Metres, metresFromMm } from "#quantity";
import { exactMm } from "../family/exact-figure.ts";
import type { WireBody } from "./document-schemas.ts";

type Reader<K extends DocumentKind> = (wire: WireBody<K>) => DocumentBodies[K];
type Writer<K extends DocumentKind> = (body: DocumentBodies[K]) => WireBody<K>;

const metresOf = (mm: number | null): Metres | null => (mm === null ? null : metresFromMm(mm));
const mmOf = (length: Metres | null): number | null => (length === null ? null : exactMm(length));

const readers: { readonly [K in DocumentKind]: Reader<K> } = {
  car: (wire) => ({
    registration: wire.registration,
    name: wire.name,
    year: wire.year,
    identityNumber: wire.identity_number,
    owner: wire.owner,
    family: wire.family,
    variants: wire.variants,
    distanceUnit: wire.distance_unit,
    odometerOffsetKm: wire.odometer_offset_km,
    invented: wire.invented,
  }),
  visit: ({ odometer_km, disc_minimum_mm: stamped, ...wire }) => ({
    ...wire,
    odometerKm: odometer_km,
    ...(stamped === undefined ? {} : { discMinimum: { front: metresOf(stamped.front), rear: metresOf(stamped.rear) } }),
  }),
  enquiry: (wire) => ({
    words: wire.words,
    symptoms: wire.symptoms.map(({ conditions: { speed_kph, ...conditions }, ...symptom }) => ({
      ...symptom,
      conditions: { ...conditions, speedKmh: speed_kph },
    })),
    use: wire.use,
    ...(wire.suspects !== undefined && { suspects: wire.suspects }),
  }),
  plan: (wire) => ({
    visits: wire.visits.map(({ label, odometer_km, date }) => ({
      label,
      odometerKm: odometer_km,
      ...(date !== undefined && { date }),
    })),
    declined: wire.declined,
    agreed: wire.agreed,
    fixed: wire.fixed,
    horizonKm: wire.horizon_km,
  }),
  "job-card": (wire) => ({
    steps: wire.steps.map(({ step, done_by, at, hub_to_arch_mm, torque_nm, note }) => ({
      step,
      doneBy: done_by,
      at,
      hubToArch: hub_to_arch_mm === null ? null : metresFromMm(hub_to_arch_mm),
      torqueNm: torque_nm,
      note,
    })),
  }),
  "hand-over": (wire) => ({
    overrides: wire.overrides,
    taught: wire.taught,
    signedBy: wire.signed_by,
    signedAt: wire.signed_at,
    receivedBy: wire.received_by,
  }),
  settings: (wire) => ({
    workshop: wire.workshop,
    currency: wire.currency,
    labourCentsPerHour: wire.labour_cents_per_hour,
    taxShare: wire.tax_share,
    visitCents: wire.visit_cents,
    units: wire.units,
    invented: wire.invented,
  }),
  "car-line": (wire) => ({ offList: wire.off_list }),
};

const copies = <T>(list: readonly T[]): T[] => list.map((one) => ({ ...one }));

const writers: { readonly [K in DocumentKind]: Writer<K> } = {
  car: (body) => ({
    registration: body.registration,
    name: body.name,
    year: body.year,
    identity_number: body.identityNumber,
    owner: body.owner,
    family: body.family,
    variants: copies(body.variants),
    distance_unit: body.distanceUnit,
    odometer_offset_km: body.odometerOffsetKm,
    invented: body.invented,
  }),
  visit: (body) => ({
    car: body.car,
    odometer_km: body.odometerKm,
    date: body.date,
    by: body.by,
    bay: body.bay,
    done: [...body.done],
    waits: copies(body.waits),
    settled: body.settled,
    ...(body.discMinimum === undefined
      ? {}
      : { disc_minimum_mm: { front: mmOf(body.discMinimum.front), rear: mmOf(body.discMinimum.rear) } }),
    closed: body.closed,
  }),
  enquiry: (body) => ({
    words: body.words,
    symptoms: body.symptoms.map(({ conditions: { speedKmh, ...conditions }, ...symptom }) => ({
      ...symptom,
      conditions: { speed_kph: speedKmh === null ? null : [...speedKmh], ...conditions },
    })),
    use: body.use,
    ...(body.suspects !== undefined && { suspects: copies(body.suspects) }),
  }),
  plan: (body) => ({
    visits: body.visits.map(({ label, odometerKm, date }) => ({
      label,
      odometer_km: odometerKm,
      ...(date !== undefined && { date }),
    })),
    declined: [...body.declined],
    agreed: copies(body.agreed),
    fixed: copies(body.fixed),
    horizon_km: body.horizonKm,
  }),
  "job-card": (body) => ({
    steps: body.steps.map(({ step, doneBy, at, hubToArch, torqueNm, note }) => ({
      step,
      done_by: doneBy,
      at,
      hub_to_arch_mm: hubToArch === null ? null : exactMm(hubToArch),
      torque_nm: torqueNm,
      note,
    })),
  }),
  "hand-over": (body) => ({
    overrides: copies(body.overrides),
    taught: copies(body.taught),
    signed_by: body.signedBy,
    signed_at: body.signedAt,
    received_by: body.receivedBy,
  }),
  settings: (body) => ({
    workshop: body.workshop,
    currency: body.currency,
    labour_cents_per_hour: body.labourCentsPerHour,
    tax_share: body.taxShare,
    visit_cents: body.visitCents,
    units: { ...body.units },
    invented: body.invented,
  }),
  "car-line": (body) => ({ off_list: body.offList }),
};

/** The body of a document from the JSON its schema has accepted. */
export const readBody = <K extends DocumentKind>(kind: K, wire: WireBody<K>): DocumentBodies[K] => readers[kind](wire);

/** The body of a document as JSON; readBody gives the same body back. */
export const formatBody = <K extends DocumentKind>(kind: K, body: DocumentBodies[K]): WireBody<K> =>
  writers[kind](body);
