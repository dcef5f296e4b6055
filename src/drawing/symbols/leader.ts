import { formatNumber, type Spot } from "../path.ts";
import type { Mark } from "../scene.ts";
import { strokes } from "../tokens.ts";

export interface LeaderShape {
  /** Where it leaves the label; it runs level from here to the knee. */
  readonly port: Spot;
  readonly knee: Spot;
  /** What it points at; it ends `clear` page units before it. */
  readonly point: Spot;
  readonly clear: number;
  readonly selected?: boolean;
}

/** A leader: level from its label to the knee, then straight to the part. */
export function drawLeader({ port, knee, point, clear, selected = false }: LeaderShape): Mark {
  const distance = Math.hypot(point[0] - knee[0], point[1] - knee[1]);
  const share = distance > clear ? (distance - clear) / distance : 0;
  const end: Spot = [knee[0] + (point[0] - knee[0]) * share, knee[1] + (point[1] - knee[1]) * share];
  const d = `M${formatNumber(port[0])} ${formatNumber(port[1])}L${formatNumber(knee[0])} ${formatNumber(knee[1])}L${formatNumber(end[0])} ${formatNumber(end[1])}`;
  return {
    kind: "path",
    d,
    stroke: { colour: selected ? "accent" : "ink3", width: selected ? 1.4 : strokes.leader },
  };
}
