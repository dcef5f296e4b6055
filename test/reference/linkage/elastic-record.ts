import { ComplianceSolver, type CornerLoad, type ElasticCorner } from "#engines/linkage";
import { elasticityFromWire, faultsFromWire } from "../../../src/contract/doors/linkage-reading.ts";
import { playSchema, rubberSchema, softSchema } from "../../../src/contract/doors/linkage-schema.ts";
import { type CornerRecord, cornerGeometry, cornerInput, seatInput, type Triple } from "./corner-record.ts";

interface EndRecord {
  readonly radial: number;
  readonly axial?: number;
  readonly axis?: Triple;
}

/** What is elastic, in the form of the reference: N/mm and N. */
export interface ElasticRecord {
  readonly wheel_load: number;
  readonly spring_rate: number;
  readonly strut_top?: EndRecord;
  readonly trailing_arm?: EndRecord;
  readonly links: Readonly<
    Record<string, { readonly inner?: EndRecord; readonly outer?: EndRecord; readonly member?: number }>
  >;
}

export type FaultRecord =
  | { readonly type: "soft"; readonly link: string; readonly factor: number; readonly end?: "inner" | "outer" }
  | { readonly type: "play"; readonly link: string; readonly total: number };

/** One state of the reference: mm, degrees, N. */
export type StateRecord = Readonly<Record<string, number | boolean | null>>;

export interface LoadRecord {
  readonly fy?: number;
  readonly brake_fx?: number;
  readonly drive_fx?: number;
  readonly mz?: number;
}

export interface ComplianceCase {
  readonly geometry: string;
  readonly fault: FaultRecord | null;
  readonly hold: "wheel_load" | "contact_height";
  readonly contact_rise?: number;
  readonly link_stiffness: Readonly<Record<string, number>>;
  readonly mount_stiffness?: Readonly<Record<string, EndRecord>>;
  readonly states: Readonly<Record<string, readonly StateRecord[]>>;
  readonly tangent_at_static: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly secant: Readonly<Record<string, Readonly<Record<string, number>> | null>>;
}

export interface ComplianceFile {
  readonly loads: Readonly<Record<string, LoadRecord>>;
  readonly geometries: Readonly<Record<string, CornerRecord>>;
  readonly elastic: Readonly<Record<string, ElasticRecord>>;
  readonly cases: readonly ComplianceCase[];
}

const rates = (end: EndRecord) => ({
  radial_n_per_mm: end.radial,
  ...(end.axial !== undefined && end.axis ? { axial_n_per_mm: end.axial, axis: end.axis } : {}),
});

/** Rubber entries of the door. */
export function rubberInput(elastic: ElasticRecord) {
  const mounts = (["strut_top", "trailing_arm"] as const).flatMap((link) => {
    const mount = elastic[link];
    return mount ? [{ link, ...rates(mount) }] : [];
  });
  const ends = Object.entries(elastic.links).flatMap(([link, parts]) =>
    (["inner", "outer"] as const).flatMap((end) => {
      const rate = parts[end];
      return rate ? [{ link, end, ...rates(rate) }] : [];
    }),
  );
  return [...mounts, ...ends];
}

/** Member entries of the door. */
export function memberInput(elastic: ElasticRecord) {
  return Object.entries(elastic.links).flatMap(([link, { member }]) =>
    member === undefined ? [] : [{ link, n_per_mm: member }],
  );
}

function faultInput(fault: FaultRecord | null) {
  if (!fault) return [];
  if (fault.type === "play") return [{ link: fault.link, kind: "play" as const, total_mm: fault.total }];
  return [{ link: fault.link, kind: "soft" as const, factor: fault.factor, ...(fault.end ? { end: fault.end } : {}) }];
}

/** A load of the door from one of the reference; braking is rearward. */
export function loadInput(load: LoadRecord, rise: number | undefined) {
  return {
    lateral_n: load.fy ?? 0,
    braking_n: -(load.brake_fx ?? 0),
    drive_n: load.drive_fx ?? 0,
    aligning_nm: (load.mz ?? 0) / 1000,
    ...(rise === undefined ? {} : { contact_rise_mm: rise }),
  };
}

/** Everything the door is asked for one case but its loads. */
export function complianceInput(corner: CornerRecord, elastic: ElasticRecord, one: ComplianceCase) {
  return {
    ...cornerInput(corner),
    spring: { ...seatInput(corner.spring), rate_n_per_mm: elastic.spring_rate },
    rubber: rubberInput(elastic),
    members: memberInput(elastic),
    wheel_load_n: elastic.wheel_load,
    hold: one.hold,
    faults: faultInput(one.fault),
  };
}

/** The same corner for the engine, for what the door does not say. */
export function elasticCorner(corner: CornerRecord, elastic: ElasticRecord, one: ComplianceCase): ElasticCorner {
  const wire = {
    rate_n_per_mm: elastic.spring_rate,
    rubber: rubberInput(elastic).map((r) => rubberSchema.parse(r)),
    members: memberInput(elastic),
    wheel_load_n: elastic.wheel_load,
  };
  const faults = faultInput(one.fault).map((f) => (f.kind === "soft" ? softSchema.parse(f) : playSchema.parse(f)));
  return {
    geometry: cornerGeometry(corner),
    elasticity: elasticityFromWire(wire, "left", cornerInput(corner).strut),
    hold: one.hold === "contact_height" ? "contact-height" : "wheel-load",
    faults: faultsFromWire(faults),
  };
}

export const makeSolver = (...of: Parameters<typeof elasticCorner>): ComplianceSolver =>
  new ComplianceSolver(elasticCorner(...of));

/** A load of the engine from one of the reference. */
export function engineLoad(load: LoadRecord, rise: number | undefined): CornerLoad {
  return {
    lateral: load.fy ?? 0,
    braking: -(load.brake_fx ?? 0),
    drive: load.drive_fx ?? 0,
    aligning: (load.mz ?? 0) / 1000,
    contactRise: (rise ?? 0) / 1000,
    rack: 0,
  };
}
