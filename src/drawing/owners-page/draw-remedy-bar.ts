import { polygon, polyline, type Spot } from "../path.ts";
import type { Mark } from "../scene.ts";
import { thinLine } from "../symbols/look.ts";
import { dashes } from "../tokens.ts";

export interface RemedyBar {
  /** Page x of now and of the end of the rule. */
  readonly from: number;
  readonly to: number;
  /** Page y of its middle line, and half its height while the part is sure to last. */
  readonly y: number;
  readonly half: number;
  /** Chance (0 to 1) that it lasts to a share (0 to 1) of the rule; null: no life on file. */
  readonly lasts: ((share: number) => number) | null;
  /** Share of the rule at which it is advised; null: not within it. */
  readonly advised: number | null;
}

const STEPS = 60;
/** Thinner than this the bar has ended, as a chance. */
const GONE = 0.02;

/** How far a part lasts, as a bar as thick as it is likely; grey up to the ring where the work is advised. */
export function drawRemedyBar({ from, to, y, half, lasts, advised }: RemedyBar): readonly Mark[] {
  const x = (share: number) => from + share * (to - from);
  if (lasts === null) {
    const unknown = polyline([
      [from, y],
      [to, y],
    ]);
    return [{ kind: "path", d: unknown, stroke: { ...thinLine, dash: dashes.practice } }, ...ring(advised, x, y)];
  }
  const shares = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);
  const last = shares.findIndex((share) => lasts(share) < GONE);
  const shown = last < 0 ? shares : shares.slice(0, Math.max(last, 1) + 1);
  const shape = (list: readonly number[]): string => {
    const edge = (sign: number): Spot[] => list.map((share) => [x(share), y + sign * half * lasts(share)]);
    return polygon([...edge(-1), ...edge(1).toReversed()]);
  };
  const marks: Mark[] = [];
  if (advised !== null && advised > 0) {
    const done = [...shown.filter((share) => share < advised), Math.min(advised, shown.at(-1) ?? advised)];
    marks.push({ kind: "path", d: shape(done), fill: "ink", opacity: 0.28 });
  }
  marks.push({ kind: "path", d: shape(shown), stroke: thinLine });
  return [...marks, ...ring(advised, x, y)];
}

/** Where it is advised: a ring with a dot. */
function ring(advised: number | null, x: (share: number) => number, cy: number): readonly Mark[] {
  if (advised === null) return [];
  const cx = x(advised);
  return [
    { kind: "circle", cx, cy, r: 7, stroke: { colour: "ink", width: 2.2 }, fill: "paper" },
    { kind: "circle", cx, cy, r: 2.6, fill: "ink" },
  ];
}
