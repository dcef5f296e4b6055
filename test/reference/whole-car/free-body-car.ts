/** One axle of a car on level parallel arms that turn about lines along the car; SI. */
export interface ArmAxle {
  /** Of the wheel centres, along the car. */
  readonly x: number;
  readonly half: number;
  readonly arm: number;
  readonly springRate: number;
  readonly wheelLoad: number;
  readonly unsprung: number;
  readonly tyreRate: number;
  readonly brakeShare: number;
  readonly driveShare: number;
}

export interface ArmCar {
  readonly axles: readonly [front: ArmAxle, rear: ArmAxle];
  readonly massHeight: number;
  readonly radius: number;
  readonly gravity: number;
}

/** The spring stands upright from the knuckle so far inboard of the wheel centre, so long at rest. */
export const SPRING = { inboard: 0.1, length: 0.4 } as const;

export interface FreeBodyWheel {
  readonly load: number;
  readonly travel: number;
}

type V = readonly [number, number, number];
type Three = readonly [V, V, V];
const plus = (a: V, b: V): V => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (k: number, a: V): V => [k * a[0], k * a[1], k * a[2]];
const inner = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const turn = (m: Three, a: V): V => [inner(m[0], a), inner(m[1], a), inner(m[2], a)];

/** Forward axis down by `pitch`, then the left side up by `roll` about the body's own length. */
function bodyAxes(roll: number, pitch: number): Three {
  const [cr, sr, cp, sp] = [Math.cos(roll), Math.sin(roll), Math.cos(pitch), Math.sin(pitch)];
  return [
    [cp, sp * sr, sp * cr],
    [0, cr, -sr],
    [-sp, cp * sr, cp * cr],
  ];
}

/**
 * Loads and travels of the four wheels (front left, front right, rear left, rear right) of a car on arms, as a sum of
 * forces on free bodies: each knuckle, which its parallel arms only let move along an arc, and the whole car on the ground.
 * By Newton with differences. No virtual work, no linkage, no roll centre, no instant centre.
 */
export function solveFreeBodyCar(car: ArmCar, lateral: number, forward: number): readonly FreeBodyWheel[] {
  const { axles, gravity, radius } = car;
  const weight = 2 * (axles[0].wheelLoad + axles[1].wheelLoad);
  const mass = weight / gravity;
  const middle = (2 * (axles[0].wheelLoad * axles[0].x + axles[1].wheelLoad * axles[1].x)) / weight;
  const unsprung = 2 * (axles[0].unsprung + axles[1].unsprung);
  const sprung = mass - unsprung;
  const sprungAt: V = [
    (mass * middle - 2 * axles.reduce((sum, a) => sum + a.unsprung * a.x, 0)) / sprung,
    0,
    (mass * car.massHeight - unsprung * radius) / sprung,
  ];
  const wheels = axles.flatMap((axle) => [1, -1].map((side) => ({ axle, side })));
  const inertia = (m: number): V => [-m * forward, -m * lateral, -m * gravity];
  const equations = (u: readonly number[]): number[] => {
    const [heave = 0, roll = 0, pitch = 0] = u;
    const axes = bodyAxes(roll, pitch);
    const place = (p: V): V => plus([middle, 0, heave], turn(axes, plus(p, [-middle, 0, 0])));
    const loads = u.slice(7);
    const forces: { at: V; force: V }[] = [{ at: place(sprungAt), force: inertia(sprung) }];
    const own = wheels.map(({ axle, side }, i) => {
      const swing = u[3 + i] as number;
      const load = loads[i] as number;
      const [c, s] = [Math.cos(swing), Math.sin(swing)];
      const moved: V = [0, -side * axle.arm * (1 - c), axle.arm * s];
      const centre = place(plus([axle.x, side * axle.half, radius], moved));
      const spin = turn(axes, [0, 1, 0]);
      const down = plus([0, 0, -1], times(spin[2], spin));
      const contact = plus(centre, times(radius / Math.sqrt(inner(down, down)), down));
      const other = loads[i ^ 1] as number;
      const aside = (((2 * axle.wheelLoad) / gravity) * lateral * load) / (load + other);
      const along = (mass / 2) * forward * (forward < 0 ? axle.brakeShare : axle.driveShare);
      const ground: V = [along, aside, load];
      forces.push({ at: contact, force: ground }, { at: centre, force: inertia(axle.unsprung) });
      // On the knuckle, along the arc: ground, own weight and the spring, whose line leans as the knuckle goes inboard.
      const arc = turn(axes, [0, -side * s, c]);
      const line: V = [0, -moved[1], SPRING.length - moved[2]];
      const length = Math.sqrt(inner(line, line));
      const standing = axle.wheelLoad - axle.unsprung * gravity;
      const push = standing + axle.springRate * (SPRING.length - length);
      const spring = turn(axes, times(-push / length, line));
      const onArc = inner(arc, plus(plus(ground, inertia(axle.unsprung)), spring));
      return { onArc, gap: contact[2] + (load - axle.wheelLoad) / axle.tyreRate };
    });
    let [up, over, nose] = [0, 0, 0];
    for (const { at, force } of forces) {
      up += force[2];
      over += at[1] * force[2] - at[2] * force[1];
      nose += at[2] * force[0] - (at[0] - middle) * force[2];
    }
    return [up, over, nose, ...own.map(({ onArc }) => onArc), ...own.map(({ gap }) => 1e5 * gap)];
  };
  let u: number[] = [0, 0, 0, 0, 0, 0, 0, ...wheels.map(({ axle }) => axle.wheelLoad)];
  for (let i = 0; i < 20; i++) {
    const at = equations(u);
    const columns = u.map((x, k) => {
      const step = k < 7 ? 1e-6 : 1e-1;
      const moved = (by: number) => equations(u.map((y, j) => (j === k ? x + by : y)));
      const [high, low] = [moved(step), moved(-step)];
      return at.map((_, row) => ((high[row] as number) - (low[row] as number)) / (2 * step));
    });
    const change = eliminate(columns, at);
    u = u.map((x, k) => x - (change[k] as number));
  }
  return wheels.map(({ axle }, i) => ({
    load: u[7 + i] as number,
    travel: axle.arm * Math.sin(u[3 + i] as number),
  }));
}

/** Solves a square system given by columns, pivots by rows. */
function eliminate(columns: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const n = right.length;
  const rows = right.map((b, i) => [...columns.map((column) => column[i] as number), b]);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]?.[k] ?? 0) > Math.abs(rows[best]?.[k] ?? 0)) best = i;
    const pivot = rows[best] as number[];
    rows[best] = rows[k] as number[];
    rows[k] = pivot;
    for (let i = 0; i < n; i++) {
      const row = rows[i] as number[];
      const by = (row[k] as number) / (pivot[k] as number);
      if (i !== k) for (let j = k; j <= n; j++) row[j] = (row[j] as number) - by * (pivot[j] as number);
    }
  }
  return rows.map((row, i) => (row[n] as number) / (row[i] as number));
}
