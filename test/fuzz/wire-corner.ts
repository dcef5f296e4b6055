import { makeRandom } from "./differences.ts";

type Point = readonly [number, number, number];

/** Keys that hold a point or a direction of the vehicle frame. */
const places = new Set([
  "inner_mm",
  "outer_mm",
  "top_mm",
  "axis_point_mm",
  "bush_mm",
  "centre_mm",
  "body_mm",
  "moving_mm",
  "at_mm",
  "about_mm",
]);
const directions = new Set(["axis", "free_axis", "inner_axis"]);

/** How a request is turned into another: what becomes of points, directions and of the figures under a key. */
export interface WireMap {
  readonly point: (p: Point) => Point;
  readonly direction: (a: Point) => Point;
  readonly figures: Readonly<Record<string, (x: number) => number>>;
}

/** The request with every point, direction and named figure sent through the map. */
export function mapRequest(value: unknown, map: WireMap, key = ""): unknown {
  if (Array.isArray(value)) {
    if (places.has(key)) return map.point(value as unknown as Point);
    if (directions.has(key)) return map.direction(value as unknown as Point);
    return value.map((one) => mapRequest(one, map, key));
  }
  if (typeof value === "number") return map.figures[key]?.(value) ?? value;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, mapRequest(v, map, k)]));
}

/** The request with every joint moved by up to `most` mm, points that coincide together. */
export function disturbRequest(value: unknown, seed: number, most: number): unknown {
  const random = makeRandom(seed);
  const moved = new Map<string, Point>();
  const shift = (): number => Math.round(1e4 * most * (2 * random() - 1)) / 1e4;
  const joints = new Set(["inner_mm", "outer_mm", "top_mm", "axis_point_mm", "bush_mm", "at_mm"]);
  const walk = (x: unknown, key: string): unknown => {
    if (Array.isArray(x) && joints.has(key)) {
      const known = moved.get(x.join());
      if (known) return known;
      const [a, b, c] = x as [number, number, number];
      const made: Point = [a + shift(), b + shift(), c + shift()];
      moved.set(x.join(), made);
      return made;
    }
    if (Array.isArray(x)) return x.map((one) => walk(one, key));
    if (typeof x !== "object" || x === null) return x;
    return Object.fromEntries(Object.entries(x).map(([k, v]) => [k, walk(v, k)]));
  };
  return walk(value, "");
}

/** Largest difference of two answers, key by key, relative above 1; infinite where they differ in form. */
export function differenceOf(a: unknown, b: unknown): number {
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b) / Math.max(1, Math.abs(a), Math.abs(b));
  if (Array.isArray(a) && Array.isArray(b)) {
    if (a.length !== b.length) return Number.POSITIVE_INFINITY;
    return a.reduce<number>((most, x, i) => Math.max(most, differenceOf(x, b[i])), 0);
  }
  if (typeof a === "object" && typeof b === "object" && a !== null && b !== null) {
    const keys = Object.keys(a);
    if (keys.sort().join() !== Object.keys(b).sort().join()) return Number.POSITIVE_INFINITY;
    return keys.reduce(
      (most, key) =>
        Math.max(most, differenceOf((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key])),
      0,
    );
  }
  return a === b ? 0 : Number.POSITIVE_INFINITY;
}
