import type { Family } from "#vehicle";
import { type BelowView, type Break, belowView, halfWidth, reachAlong } from "../below/below-view.ts";
import { scaleWords } from "../scale-words.ts";
import type { TypeScale } from "../scene.ts";

/** Where everything of an underside drawing goes, page units. */
export interface UndersideLayout {
  readonly view: BelowView;
  /** Track dimension and sides in words, above and below the car. */
  readonly headY: number;
  readonly footY: number;
  /** Base line of the legend, or null. */
  readonly legendY: number | null;
  /** Left and right edge of the drawing with its margins: labels end and begin here. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface UndersideRoom {
  /** Upper left corner of the room; absent = that of the scene. */
  readonly x?: number;
  readonly y?: number;
  readonly width: number;
  readonly height: number;
  readonly type: TypeScale;
  readonly legend: boolean;
  /** Width each side keeps for labels. */
  readonly labelWidth: number;
}

const HEAD = 42;
const FOOT = 42;
const LEGEND = 36;
/** Shortest plain stretch that is worth leaving out, metres. */
const LEAST_BREAK = 0.3;
/** Page units between the break lines. */
const GAP = { desk: 44, touch: 34 } as const;
const BEYOND = { front: 0.07, rear: 0.06 } as const;

/** The largest scale at which the car, shortened between its axles, fits into the room, and where it then lies. */
export function layoutUnderside(family: Family, room: UndersideRoom): UndersideLayout {
  const [frontRear, frontFront] = reachAlong(family.front);
  const [rearRear, rearFront] = reachAlong(family.rear);
  const stretch = frontRear - BEYOND.front - (rearFront + BEYOND.rear);
  const cut: Break | null =
    stretch > LEAST_BREAK
      ? { front: frontRear - BEYOND.front, rear: rearFront + BEYOND.rear, gap: GAP[room.type] }
      : null;
  const length = frontFront - rearRear - (cut === null ? 0 : cut.front - cut.rear);
  const half = Math.max(halfWidth(family.front), halfWidth(family.rear)) + 0.03;
  const legend = room.legend ? LEGEND : 0;
  const free = room.height - HEAD - FOOT - legend - (cut?.gap ?? 0);
  const scale = Math.max(Math.min(free / length, (room.width - 2 * room.labelWidth) / (2 * half)), 1);
  const drawn = length * scale + (cut?.gap ?? 0);
  const spare = Math.max(room.height - HEAD - FOOT - legend - drawn, 0) / 2;
  const top = (room.y ?? 0) + HEAD + spare;
  const centreX = (room.x ?? 0) + room.width / 2;
  const view = belowView(centreX, top, frontFront, scale, cut);
  const bottom = top + drawn;
  return {
    view,
    headY: top - 20,
    footY: bottom + 20,
    legendY: room.legend ? (room.y ?? 0) + room.height - 14 : null,
    left: centreX - half * scale,
    right: centreX + half * scale,
    top,
    bottom,
  };
}

/** The scale of an underside drawing in words: "broken view, 1 : 9". */
export function brokenScale({ view }: UndersideLayout): string {
  const words = scaleWords(view.scale);
  return view.break === null ? words : `broken view, ${words}`;
}
