/** A point on the page, y downward. */
export type Spot = readonly [x: number, y: number];

/** A number as it stands in path data: two decimals, no trailing zeros, never -0. */
export function formatNumber(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

const pair = ([x, y]: Spot): string => `${formatNumber(x)} ${formatNumber(y)}`;

/** Path data of a run of straight lines. */
export function polyline(spots: readonly Spot[]): string {
  return spots.length === 0 ? "" : `M${spots.map(pair).join("L")}`;
}

/** Path data of a closed polygon. */
export function polygon(spots: readonly Spot[]): string {
  return spots.length === 0 ? "" : `${polyline(spots)}z`;
}

/** Path data of a closed polygon whose corners are rounded by `radius` (less where a side is too short for it). */
export function roundedPolygon(spots: readonly Spot[], radius: number): string {
  const parts = spots.map((corner, i) => {
    const before = spots.at(i - 1) ?? corner;
    const after = spots.at((i + 1) % spots.length) ?? corner;
    const [start, end] = [before, after].map((other) => {
      const distance = Math.hypot(other[0] - corner[0], other[1] - corner[1]) || 1;
      const cut = Math.min(radius, distance / 2.05) / distance;
      return [corner[0] + (other[0] - corner[0]) * cut, corner[1] + (other[1] - corner[1]) * cut] as const;
    });
    return `${pair(start ?? corner)}Q${pair(corner)} ${pair(end ?? corner)}`;
  });
  return parts.length === 0 ? "" : `M${parts.join("L")}z`;
}

/** Path data of a circle. */
export function circlePath([x, y]: Spot, radius: number): string {
  const r = formatNumber(radius);
  const d = formatNumber(2 * radius);
  return `M${formatNumber(x - radius)} ${formatNumber(y)}a${r} ${r} 0 1 1 ${d} 0a${r} ${r} 0 1 1 -${d} 0z`;
}

/** Path data of a straight bar with round ends; all bars and circles turn the same way, so overlapping ones unite. */
export function capsulePath(from: Spot, to: Spot, radius: number): string {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = Math.hypot(dx, dy);
  if (length < 1e-6) return circlePath(from, radius);
  const nx = (dy / length) * radius;
  const ny = (-dx / length) * radius;
  const r = formatNumber(radius);
  return (
    `M${pair([from[0] + nx, from[1] + ny])}L${pair([to[0] + nx, to[1] + ny])}` +
    `A${r} ${r} 0 0 1 ${pair([to[0] - nx, to[1] - ny])}L${pair([from[0] - nx, from[1] - ny])}` +
    `A${r} ${r} 0 0 1 ${pair([from[0] + nx, from[1] + ny])}z`
  );
}

/** Path data of a rectangle. */
export function rectanglePath(x: number, y: number, width: number, height: number): string {
  return polygon([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]);
}

/** Path data of a bent line that turns once, at `bend`. */
export function bentLine(from: Spot, bend: Spot, to: Spot): string {
  return `M${pair(from)}Q${pair(bend)} ${pair(to)}`;
}
