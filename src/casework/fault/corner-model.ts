import type {
  CornerElasticity,
  CornerGeometry,
  ElasticFault,
  EndRate,
  PointCorrelations,
  PointDeviation,
  RateDeviation,
  RubberEnd,
  SeatGeometry,
} from "#engines/linkage";
import { mirrorY, type Vector } from "#numeric";
import {
  assembleCorner,
  axleAndSide,
  type Corner,
  type CornerAssembly,
  type CornerBodies,
  type CornerBodyPlace,
  type CornerJoint,
  type CornerSeat,
  type Family,
  type Position,
  STRUT_TOP,
  TRAILING_ARM,
} from "#vehicle";

/** What is on file of a corner: always a left one; `mirrored` says that the asked one is its mirror image. */
export interface CornerKnown {
  readonly assembly: CornerAssembly;
  readonly mirrored: boolean;
}

/** One corner with a single knuckle as the linkage computes with it. */
export interface CornerModel extends CornerKnown {
  readonly geometry: CornerGeometry;
  readonly elasticity: CornerElasticity;
  /** Standard deviations of the mechanism's points, by their names. */
  readonly deviations: (names: readonly string[]) => readonly PointDeviation[];
  /** How their errors hang together, in the same order; null: none do. */
  readonly correlations: (names: readonly string[]) => PointCorrelations;
  readonly rates: readonly RateDeviation[];
}

/** Names the linkage engine uses for the two mounts that are no links. */
const ENGINE_NAME: Readonly<Record<string, string>> = { [STRUT_TOP]: "strut_top", [TRAILING_ARM]: "trailing_arm" };

/** The engine's name of a link or mount. */
export const engineName = (name: string): string => ENGINE_NAME[name] ?? name;

/** Builds the left-hand model of a corner from its family; its axle must have one knuckle (isOfBodies is false). */
export function modelCorner(family: Family, corner: Corner): CornerModel {
  const { axle, side } = axleAndSide(corner);
  const assembly = assembleCorner(family, `${axle}-left`);
  return {
    assembly,
    mirrored: side === "right",
    ...modelOfAssembly(assembly),
    deviations: (names) => names.map((name) => deviationOf(assembly, name)),
    correlations: (names) => correlationsOf(assembly, names),
    rates: ratesOf(assembly),
  };
}

/** Geometry and elasticity of an assembled left-hand corner with one knuckle. */
export function modelOfAssembly(assembly: CornerAssembly): Pick<CornerModel, "geometry" | "elasticity"> {
  if (assembly.bodies) throw new Error(`the ${assembly.axle} axle is of several bodies: nothing was asked before`);
  return { geometry: geometryOf(assembly), elasticity: elasticityOf(assembly) };
}

function geometryOf(a: CornerAssembly): CornerGeometry {
  const seat = (s: CornerSeat): SeatGeometry => {
    const name = (i: number): string => a.links[i]?.name ?? "";
    if (s.on === "knuckle") return { on: "knuckle", moving: s.moving };
    if (s.on === "link") return { on: "link", link: name(s.link), fraction: s.fraction };
    return { on: "arm", links: [name(s.links[0]), name(s.links[1])], moving: s.moving };
  };
  return {
    wheel: { centre: a.wheel.centre, camber: a.wheel.camber, toe: a.wheel.toe, loadedRadius: a.wheel.loadedRadius },
    links: a.links.map((l) => ({ name: l.name, inner: l.inner.at, outer: l.outer.at, steered: l.steered })),
    ...(a.strut ? { strut: { top: a.strut.top.at, axisPoint: a.strut.axisPoint.at } } : {}),
    ...(a.trailingArm
      ? {
          trailingArm: {
            bush: a.trailingArm.bush.at,
            ...(a.trailingArm.freeAxis ? { freeAxis: a.trailingArm.freeAxis } : {}),
          },
        }
      : {}),
    spring: { body: a.spring.body, seat: seat(a.spring.seat) },
    damper: { body: a.damper.body, seat: seat(a.damper.seat) },
  };
}

/** Rates of an end that has any; a rigid one has none. */
export function rateOf(joint: CornerJoint): EndRate | null {
  if (joint.radial === null) return null;
  return {
    radial: joint.radial,
    ...(joint.axial !== null && joint.axis ? { axial: joint.axial, axis: joint.axis } : {}),
    ...(joint.voided ? { voided: joint.voided } : {}),
    ...(joint.conical !== null ? { conical: joint.conical } : {}),
    ...(joint.torsional !== null ? { torsional: joint.torsional } : {}),
  };
}

function elasticityOf(a: CornerAssembly): CornerElasticity {
  const rubber: RubberEnd[] = a.links.flatMap((l) => {
    const ends: RubberEnd[] = [];
    const inner = rateOf(l.innerJoint);
    const outer = rateOf(l.outerJoint);
    if (inner) ends.push({ link: l.name, end: "inner", rate: inner });
    if (outer) ends.push({ link: l.name, end: "outer", rate: outer });
    return ends;
  });
  const strutTop = a.strut ? rateOf(a.strut.topMount) : null;
  const arm = a.trailingArm ? rateOf(a.trailingArm.bushJoint) : null;
  return {
    springRate: a.spring.rate,
    rubber,
    ...(strutTop ? { strutTop } : {}),
    ...(arm ? { trailingArm: arm } : {}),
    members: a.links.flatMap((l) => (l.memberRate === null ? [] : [{ link: l.name, rate: l.memberRate }])),
    wheelLoad: a.wheelLoad,
  };
}

/** Number of the assembly's point behind a name of the linkage; below 0 where there is none. */
export const pointIndex = (a: CornerAssembly, engineName: string): number => {
  const name = engineName.replace("trailing_arm.", `${TRAILING_ARM}.`).replace("axis_point", "axis-point");
  return a.points.findIndex((p) => p.name === name);
};

function deviationOf(a: CornerAssembly, engineName: string): PointDeviation {
  const point = a.points[pointIndex(a, engineName)];
  return point ? [...point.sd] : [0, 0, 0];
}

function correlationsOf(a: CornerAssembly, names: readonly string[]): PointCorrelations {
  const { correlation } = a;
  if (correlation === null) return null;
  const rows = names.flatMap((name) => {
    const point = pointIndex(a, name);
    return [0, 1, 2].map((axis) => (point < 0 ? -1 : 3 * point + axis));
  });
  return rows.map((row, i) => rows.map((other, j) => correlation[row]?.[other] ?? (i === j ? 1 : 0)));
}

function ratesOf(a: CornerAssembly): RateDeviation[] {
  const out: RateDeviation[] = [];
  const push = (name: string, joint: CornerJoint): void => {
    if (joint.radial !== null && joint.rateSdShare > 0) out.push({ name, sd: joint.rateSdShare });
  };
  for (const l of a.links) {
    push(`${l.name}.inner`, l.innerJoint);
    push(`${l.name}.outer`, l.outerJoint);
  }
  if (a.strut) push("strut_top", a.strut.topMount);
  if (a.trailingArm) push("trailing_arm", a.trailingArm.bushJoint);
  return out;
}

/** The place of a linkage of several bodies a position stands for, or null where it has none there. */
export function bodyPlaceAt({ places }: CornerBodies, { joint }: Position): CornerBodyPlace | null {
  const end = joint?.end === "inner" ? "from" : "to";
  return places.find((place) => place.part === joint?.link && (place.end ?? end) === end) ?? null;
}

/** The joint a position stands for, or null where the linkage has none there. */
export function jointOf(a: CornerAssembly, position: Position): CornerJoint | null {
  const { joint } = position;
  if (!joint) return null;
  if (a.bodies) return bodyPlaceAt(a.bodies, position)?.joint ?? null;
  if (joint.link === STRUT_TOP) return a.strut?.topMount ?? null;
  if (joint.link === TRAILING_ARM) return a.trailingArm?.bushJoint ?? null;
  const link = a.links.find((l) => l.name === joint.link);
  return link ? (joint.end === "inner" ? link.innerJoint : link.outerJoint) : null;
}

/** Links that share the joint of a position: the one, or all of an arm at its common outer joint. */
export function linksAt(a: CornerAssembly, position: Position): readonly string[] {
  const { joint } = position;
  if (!joint) return [];
  const link = a.links.find((l) => l.name === joint.link);
  if (!link || joint.end === "inner" || link.arm === null) return [joint.link];
  return a.links.filter((l) => l.arm === link.arm).map((l) => l.name);
}

/** The engine's faults for rates times `factor` at a position. */
export function softFaults(a: CornerAssembly, position: Position, factor: number): ElasticFault[] {
  const end = position.joint?.end ?? "inner";
  return linksAt(a, position).map((link) => ({ kind: "soft", link: engineName(link), end, factor }));
}

/** The engine's faults for play at a position: a dead band along every link that meets there. */
export function playFaults(a: CornerAssembly, position: Position, play: number): ElasticFault[] {
  return linksAt(a, position).map((link) => ({ kind: "play", link: engineName(link), total: play }));
}

/** Names of the rates at a position, as the bands know them. */
export function rateNamesAt(a: CornerAssembly, position: Position): readonly string[] {
  if (a.bodies) {
    const place = bodyPlaceAt(a.bodies, position);
    return place ? [place.end ? `${place.part}.${place.end}` : place.part] : [];
  }
  const end = position.joint?.end ?? "inner";
  return linksAt(a, position).map((link) => {
    const name = engineName(link);
    return name === link ? `${link}.${end}` : name;
  });
}

/** A point or direction of the left-hand model on the asked side. */
export const onAskedSide = (model: Pick<CornerKnown, "mirrored">, v: Vector): Vector =>
  model.mirrored ? mirrorY(v) : v;
