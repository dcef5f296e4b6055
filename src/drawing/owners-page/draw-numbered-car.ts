import { type Family, type Grade, positionsOf } from "#vehicle";
import { drawCar } from "../below/draw-car.ts";
import { drawnFamily } from "../below/drawn-family.ts";
import { computeLooks } from "../below/looks.ts";
import type { PositionStates } from "../below/position-state.ts";
import { placeInColumn } from "../labels/place-labels.ts";
import type { Spot } from "../path.ts";
import type { Mark, Scene } from "../scene.ts";
import { drawBreakLines } from "../symbols/break-lines.ts";
import { drawLeader } from "../symbols/leader.ts";
import { inkLine } from "../symbols/look.ts";
import { drawCentreLine } from "../underside/draw-underside.ts";
import { familyRungWords } from "../underside/rung-words.ts";
import { brokenScale, layoutUnderside, type UndersideLayout } from "../underside/underside-layout.ts";

/** One number on the drawing and the places it stands for, the worst first. */
export interface NumberedPlaces {
  readonly number: number;
  readonly grade: Grade;
  readonly close: boolean;
  readonly positions: readonly string[];
}

export interface NumberedCarOptions {
  readonly width: number;
  readonly height: number;
  /** What has been found, by position id; what is missing is hatched. */
  readonly states: PositionStates;
  readonly places: readonly NumberedPlaces[];
}

/** Radius of the ring round a number, room a number takes in its column, and the size of a mark. */
export const NUMBER_RING = 12;
const NUMBER_ROOM = 30;
const MARK = 13;
/** From the drawing to the knees, and on to the middle of the numbers. */
const KNEE = 8;
const COLUMN = 30;

/** Small as it is, the drawing leaves out the figures of the tracks and keeps its words close to the car. */
const LESS_HEAD = 18;

function drawBreak({ view, left, right }: UndersideLayout): readonly Mark[] {
  return view.break === null ? [] : drawBreakLines(left, right, view.y(view.break.front), view.y(view.break.rear));
}

function sideWords({ left, right, headY, footY }: UndersideLayout): readonly Mark[] {
  const word = (axle: "Front" | "Rear", y: number): readonly Mark[] => [
    { kind: "text", x: left, y: y + 4.5, text: `${axle} right`, style: "dimension", halo: true },
    { kind: "text", x: right, y: y + 4.5, text: `${axle} left`, style: "dimension", anchor: "end", halo: true },
  ];
  return [...word("Front", headY + 2), ...word("Rear", footY)];
}

/** A number in its ring, as on the drawing and before its row. */
export function drawNumberRing([cx, cy]: Spot): Mark {
  return { kind: "circle", cx, cy, r: NUMBER_RING, stroke: inkLine, fill: "paper" };
}

/**
 * A car from below, small, with numbers on leaders at the places they stand for: number one is the first of the list beside
 * it. A number whose places lie nowhere on the drawing has no leader and is left out.
 */
export function drawNumberedCar(asked: Family, { width, height, states, places }: NumberedCarOptions): Scene {
  const drawn = drawnFamily(asked);
  const { family, positions } = drawn;
  const layout = layoutUnderside(family, {
    y: -LESS_HEAD,
    width,
    height: height + 2 * LESS_HEAD,
    // The narrower break of a small screen.
    type: "touch",
    legend: false,
    labelWidth: KNEE + COLUMN + NUMBER_RING,
  });
  const { view } = layout;
  const spots = new Map(positions.flatMap(({ id, at }) => (at === null ? [] : [[id, view.spot(at)] as const])));
  const marks: Mark[] = [
    ...drawCentreLine(layout),
    ...drawCar(view, drawn, computeLooks(family, positions, states, null)),
    ...drawBreak(layout),
    ...sideWords(layout),
  ];
  for (const { grade, close, positions: ids } of places.toReversed()) {
    for (const id of ids) {
      const spot = spots.get(id);
      if (spot !== undefined) marks.push({ kind: "grade", grade, close, cx: spot[0], cy: spot[1], size: MARK });
    }
  }
  for (const side of ["left", "right"] as const) {
    const own = places.flatMap(({ number, positions: ids }) => {
      const point = ids.map((id) => spots.get(id)).find((spot) => spot !== undefined);
      return point !== undefined && (side === "left") === point[0] < width / 2 ? [{ number, point }] : [];
    });
    const sign = side === "left" ? -1 : 1;
    const kneeX = side === "left" ? layout.left - KNEE : layout.right + KNEE;
    const { placed } = placeInColumn(
      own.map(({ number, point }) => ({ id: String(number), point, height: NUMBER_ROOM })),
      { side, kneeX, top: layout.top, bottom: layout.bottom, portOffset: NUMBER_ROOM / 2 },
    );
    for (const { id, knee } of placed) {
      const point = own.find(({ number }) => String(number) === id)?.point;
      if (point === undefined) continue;
      const centre: Spot = [knee[0] + sign * COLUMN, knee[1]];
      marks.push(
        drawLeader({ port: [centre[0] - sign * NUMBER_RING, centre[1]], knee, point, clear: 8 }),
        drawNumberRing(centre),
        { kind: "text", x: centre[0], y: centre[1] + 5, text: id, style: "label-bold", anchor: "middle" },
      );
    }
  }
  const said = familyRungWords(family).join("; ");
  const seen = positionsOf(family).filter(({ id }) => states[id] !== undefined).length;
  return {
    width,
    height,
    title: `${family.name}, from below`,
    description: `The car from below, front up, its left side at the right of the page; ${places.length} numbers stand where the remedies do. ${seen} of ${positions.length} places looked at.${said === "" ? "" : ` ${said}.`}`,
    marks,
    targets: [],
    scale: brokenScale(layout),
  };
}
