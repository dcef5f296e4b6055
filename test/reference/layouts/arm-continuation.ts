import type { LayoutSheet } from "#contract";

/**
 * A second way along the travel of the layout with a carrier arm and an integral link, made for the tests: unknown are
 * the angle of the arm about its hinge and a quaternion of the knuckle about the arm's ball, so that hinge and ball need
 * no equations. Jacobian by central differences, followed in steps of a millimetre. It shares nothing with the engine.
 */
type Point = readonly [number, number, number];

export interface ArmPose {
  readonly centre: Point;
  /** Unit spin axis. */
  readonly axis: Point;
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const length = (a: Point): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);

/** v turned by a quaternion of any length, scalar first. */
function turn(q: readonly number[], v: Point): Point {
  const [w, x, y, z] = q as unknown as readonly [number, number, number, number];
  const n = w * w + x * x + y * y + z * z;
  return [
    ((w * w + x * x - y * y - z * z) * v[0] + 2 * (x * y - w * z) * v[1] + 2 * (x * z + w * y) * v[2]) / n,
    (2 * (x * y + w * z) * v[0] + (w * w - x * x + y * y - z * z) * v[1] + 2 * (y * z - w * x) * v[2]) / n,
    (2 * (x * z - w * y) * v[0] + 2 * (y * z + w * x) * v[1] + (w * w - x * x - y * y + z * z) * v[2]) / n,
  ];
}

/** Gauss with row exchange; small and plain. */
function solve(a: readonly (readonly number[])[], b: readonly number[]): number[] {
  const rows = a.map((row, i) => [...row, b[i] as number]);
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    const best = rows.slice(k).reduce((top, row, i) => {
      const here = Math.abs(row[k] as number);
      return here > Math.abs(rows[top]?.[k] as number) ? k + i : top;
    }, k);
    [rows[k], rows[best]] = [rows[best] as number[], rows[k] as number[]];
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const m = (rows[i]?.[k] as number) / (rows[k]?.[k] as number);
      for (let j = k; j <= n; j++) (rows[i] as number[])[j] = (rows[i]?.[j] as number) - m * (rows[k]?.[j] as number);
    }
  }
  return rows.map((row, i) => (row[n] as number) / (row[i] as number));
}

/** Where the wheel stands at each travel (mm), each reached from ride height; links named in `longer` by so many mm. */
export function followArm(
  sheet: LayoutSheet,
  travels: readonly number[],
  longer: Readonly<Record<string, number>> = {},
): ArmPose[] {
  const at = (name: string): Point => sheet.points.find((p) => p.name === name)?.at_mm as Point;
  const [front, rear, ball] = [at("arm-front-bush"), at("arm-rear-bush"), at("arm-outer")];
  const hinge = minus(rear, front);
  const arm = (angle: number, p: Point): Point => {
    const half = angle / 2;
    const s = Math.sin(half) / length(hinge);
    return plus(front, turn([Math.cos(half), s * hinge[0], s * hinge[1], s * hinge[2]], minus(p, front)));
  };
  const centre = sheet.wheel.centre_mm;
  const links = sheet.links.map((l) => ({
    onArm: l.from.on === "carrier-arm",
    from: at(l.from.at),
    to: at(l.to.at),
    length: length(minus(at(l.to.at), at(l.from.at))) + (longer[l.name] ?? 0),
  }));
  const knuckle = (u: readonly number[], p: Point): Point =>
    plus(arm(u[0] as number, ball), turn(u.slice(1), minus(p, ball)));
  const residuals = (u: readonly number[], travel: number): number[] => [
    ...links.map((l) => length(minus(knuckle(u, l.to), l.onArm ? arm(u[0] as number, l.from) : l.from)) - l.length),
    100 * (u.slice(1).reduce((s, x) => s + x * x, 0) - 1),
    knuckle(u, centre)[2] - centre[2] - travel,
  ];
  const settle = (from: readonly number[], travel: number): number[] => {
    let u = [...from];
    for (let i = 0; i < 12; i++) {
      const f = residuals(u, travel);
      const columns = u.map((_, j) => {
        const nudged = (by: number): number[] =>
          residuals(
            u.map((x, k) => (k === j ? x + by : x)),
            travel,
          );
        const [ahead, behind] = [nudged(1e-5), nudged(-1e-5)];
        return ahead.map((a, k) => (a - (behind[k] as number)) / 2e-5);
      });
      const step = solve(
        f.map((_, row) => columns.map((c) => c[row] as number)),
        f,
      );
      u = u.map((x, j) => x - (step[j] as number));
    }
    return u;
  };
  const [g, d] = [sheet.wheel.camber_deg, sheet.wheel.toe_deg].map((x) => (x * Math.PI) / 180) as [number, number];
  const design: Point = [Math.sin(d) * Math.cos(g), Math.cos(d) * Math.cos(g), -Math.sin(g)];
  return travels.map((travel) => {
    const steps = Math.ceil(Math.abs(travel));
    let u = settle([0, 1, 0, 0, 0], 0);
    for (let i = 1; i <= steps; i++) u = settle(u, (travel * i) / steps);
    return { centre: knuckle(u, centre), axis: turn(u.slice(1), design) };
  });
}
