import type { CornerGeometry, ElasticCorner, EndRate } from "#engines/linkage";
import type { Vector } from "#numeric";
import { type CornerRecord, cornerGeometry, readReference } from "../reference/linkage/corner-record.ts";
import { type ComplianceCase, type ComplianceFile, elasticCorner } from "../reference/linkage/elastic-record.ts";

/** A corner of the reference in SI, by the name of its layout. */
export interface NamedCorner {
  readonly name: string;
  readonly geometry: CornerGeometry;
}

/** Every corner of the rigid reference, the weakly guided one included. */
export function readCorners(): readonly NamedCorner[] {
  return ["cases.json", "cases-more.json"].flatMap((file) => {
    const { geometries } = readReference<{ readonly geometries: Readonly<Record<string, CornerRecord>> }>(
      `linkage/${file}`,
    );
    return Object.values(geometries).map((corner) => ({ name: corner.name, geometry: cornerGeometry(corner) }));
  });
}

/** One healthy elastic corner per layout, wheel load held. */
export function readElasticCorners(): readonly { readonly name: string; readonly corner: ElasticCorner }[] {
  return ["compliance-cases.json", "compliance-more.json"].flatMap((name) => {
    const file = readReference<ComplianceFile>(`linkage/${name}`);
    return Object.entries(file.elastic).flatMap(([geometry, elastic]) => {
      const corner = file.geometries[geometry];
      const healthy = { geometry, fault: null, hold: "wheel_load" } as unknown as ComplianceCase;
      return corner ? [{ name: geometry, corner: elasticCorner(corner, elastic, healthy) }] : [];
    });
  });
}

/** The same corners with voids in every bush and resistance against every turn (figures invented). */
export function readVoidedCorners(): readonly { readonly name: string; readonly corner: ElasticCorner }[] {
  return readElasticCorners().map(({ name, corner }) => {
    const { rubber, strutTop, trailingArm } = corner.elasticity;
    const ofArm = (link: string): boolean => {
      const outer = corner.geometry.links.find((l) => l.name === link)?.outer.join();
      return corner.geometry.links.filter((l) => l.outer.join() === outer).length > 1;
    };
    const voided = (rate: EndRate): EndRate => ({
      ...rate,
      voided: { rate: rate.radial * 0.4, through: [0.4, -0.5, 0.8] },
      conical: 350,
      torsional: 120,
    });
    return {
      name: `${name} with voided bushes`,
      corner: {
        ...corner,
        elasticity: {
          ...corner.elasticity,
          rubber: rubber.map((r) => {
            if (r.rate.axis) return { ...r, rate: voided(r.rate) };
            // A single link's outer joint made a bush, so that one is turned against the knuckle.
            if (r.end === "inner" || ofArm(r.link)) return r;
            return { ...r, rate: voided({ ...r.rate, axis: [0.9, 0.1, 0.4], axial: r.rate.radial * 0.7 }) };
          }),
          ...(strutTop
            ? { strutTop: { ...strutTop, voided: { rate: strutTop.radial * 0.5, through: [1, 0.3, 0] }, conical: 200 } }
            : {}),
          ...(trailingArm ? { trailingArm: voided(trailingArm) } : {}),
        },
      },
    };
  });
}

/** The geometry with every point of its joints sent through a map; spring, damper and wheel stay. */
export function mapJoints(geometry: CornerGeometry, map: (p: Vector) => Vector): CornerGeometry {
  const { strut, trailingArm } = geometry;
  return {
    ...geometry,
    links: geometry.links.map((l) => ({ ...l, inner: map(l.inner), outer: map(l.outer) })),
    ...(strut ? { strut: { top: map(strut.top), axisPoint: map(strut.axisPoint) } } : {}),
    ...(trailingArm ? { trailingArm: { ...trailingArm, bush: map(trailingArm.bush) } } : {}),
  };
}

/** The geometry with all joints that stand at `point` moved by `by` along one axis. */
export function movePoint(geometry: CornerGeometry, point: Vector, axis: number, by: number): CornerGeometry {
  return mapJoints(geometry, (p) =>
    p.every((c, i) => c === point[i])
      ? [p[0] + (axis === 0 ? by : 0), p[1] + (axis === 1 ? by : 0), p[2] + (axis === 2 ? by : 0)]
      : p,
  );
}

/** The geometry with every coordinate of its joints moved by up to `most`, points that coincide together. */
export function disturb(geometry: CornerGeometry, random: () => number, most: number): CornerGeometry {
  const moved = new Map<string, Vector>();
  const shift = (): number => most * (2 * random() - 1);
  return mapJoints(geometry, (p) => {
    const known = moved.get(p.join());
    if (known) return known;
    const made: Vector = [p[0] + shift(), p[1] + shift(), p[2] + shift()];
    moved.set(p.join(), made);
    return made;
  });
}
