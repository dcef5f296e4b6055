import { mmFromMetres } from "#quantity";
import { type Axle, assumedMark, type Family, type Position } from "#vehicle";
import { drawCar } from "../below/draw-car.ts";
import { drawnFamily } from "../below/drawn-family.ts";
import { computeLooks } from "../below/looks.ts";
import type { PositionStates } from "../below/position-state.ts";
import { gradeOfState, hasFinding } from "../below/position-state.ts";
import { polyline, type Spot } from "../path.ts";
import type { GradeMark, Mark, Scene, TypeScale } from "../scene.ts";
import { drawBreakLines } from "../symbols/break-lines.ts";
import { drawArrow } from "../symbols/dimension-line.ts";
import { hairline } from "../symbols/look.ts";
import { computeStyleWidth, wrapText } from "../text-width.ts";
import { dashes, LEAST_TARGET, strokes } from "../tokens.ts";
import { carTargets, type PlaceGroup } from "./car-targets.ts";
import { type Detail, drawDetail, hasDetail } from "./detail.ts";
import { drawLegend } from "./legend.ts";
import { drawPositionLabels, labelledPositions, labelOf } from "./position-labels.ts";
import { familyRungWords, rungWords } from "./rung-words.ts";
import { brokenScale, layoutUnderside, type UndersideLayout } from "./underside-layout.ts";

export interface UndersideOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  /** What has been found, by position id; null = draw the car plain, with no mark and no hatching. */
  readonly states: PositionStates | null;
  /** Id of the selected position. */
  readonly selected?: string | null;
  /** The corner or axle that is open. */
  readonly opened?: PlaceGroup | null;
  /** The selected place grown into a circle with its section; absent or a place without one = no circle. */
  readonly detail?: Detail;
  /** The line that says what the marks mean; absent = shown where there are marks. */
  readonly legend?: boolean;
}

/** Mark sizes: with nothing to say, with a finding, selected. */
const SIZES = { plain: 11, finding: 15, selected: 18 } as const;
const LABEL_WIDTH = 164;
/** Narrower than this the car keeps the room and the labels are left to the sheets of the corners. */
const LEAST_LABELLED = 540;

/** Labels keep so far from the edge of the drawing and from its legend. */
const LABEL_EDGE = 14;

/**
 * The underside of a car: from below, front up, page right = the car's left side, the stretch between the axles left out.
 * @param asked drawn from its hard points; an axle on rung "layout" from its silhouette, wheelbase, track and tyre alone
 * @returns a scene whose targets (corners, axles, labels) do not overlap and are at least 48 units wide and high
 */
export function drawUnderside(asked: Family, options: UndersideOptions): Scene {
  const { width, height, type = "desk", states, selected = null, opened = null } = options;
  const { family, positions } = drawnFamily(asked);
  const legend = options.legend ?? states !== null;
  const labelled = states !== null && width >= LEAST_LABELLED;
  const labelWidth = labelled ? LABEL_WIDTH : LEAST_TARGET / 2;
  const layout = layoutUnderside(family, { width, height, type, legend, labelWidth });
  const { view } = layout;
  const looks = computeLooks(family, positions, states, selected);

  const marks: Mark[] = [...drawCentreLine(layout), ...drawCar(view, { family, positions }, looks)];
  const placed = positions.flatMap((position) =>
    position.at === null ? [] : [{ position, spot: view.spot(position.at) }],
  );
  const shown = placed.find(({ position }) => position.id === selected && hasDetail(position));
  const detail =
    options.detail === undefined || shown === undefined
      ? null
      : drawDetail(shown.position, shown.spot, layout, options.detail, type);
  marks.push(...drawLeftOut(family, layout, detail?.radius ?? 0));
  if (detail !== null) marks.push(...detail.marks);
  if (states !== null) marks.push(...drawMarks(placed, states, selected));

  const labels =
    states === null || !labelled
      ? []
      : labelledPositions(positions, states, selected).map((position) =>
          labelOf(position, view.spot(position.at ?? [0, 0]), states, position.id === selected, labelWidth - 34, type),
        );
  const hung = drawPositionLabels(
    labels,
    // Labels may stand above and below the car: the columns beside it have nothing else in them.
    {
      left: layout.left,
      right: layout.right,
      top: Math.min(layout.top - 10, LABEL_EDGE),
      bottom: Math.max(layout.bottom + 10, (layout.legendY ?? height) - LABEL_EDGE),
      width,
    },
    states ?? {},
    type,
  );
  // The words of the sides stand on their halo over a leader that passes behind them.
  marks.push(...hung.marks, ...drawSides(family, layout));
  if (layout.legendY !== null) marks.push(...drawLegend(24, layout.legendY, width - 48, type));
  return {
    width,
    height,
    type,
    title: `${family.name}, from below`,
    description: describe(family, positions, states),
    marks,
    targets: [...carTargets(family, positions, states, layout, opened), ...hung.targets],
    scale: brokenScale(layout),
  };
}

export function drawCentreLine({ view, top, bottom }: UndersideLayout): readonly Mark[] {
  const d = polyline([
    [view.centreX, top - 8],
    [view.centreX, bottom + 8],
  ]);
  return [{ kind: "path", d, stroke: { ...hairline, dash: dashes.axis } }];
}

/** Places nearer to each other than this share one mark, that of the place with more to say. */
const SHARED = 8;

/**
 * Marks of all places, those with something to say last, the selected one ringed. Where places lie closer than a mark is
 * wide, a finding hides a place not looked at, and that one a sound place; the corner sheet shows each by itself.
 */
function drawMarks(
  placed: readonly { readonly position: Position; readonly spot: Spot }[],
  states: PositionStates,
  selected: string | null,
): readonly Mark[] {
  const weight = ({ id }: Position): number => {
    const state = states[id];
    if (id === selected) return 20;
    if (state === undefined) return 1;
    return hasFinding(state) ? 10 + (state.grade ?? 0) : 0;
  };
  const shown: { readonly position: Position; readonly spot: Spot }[] = [];
  for (const place of placed.toSorted((a, b) => weight(b.position) - weight(a.position))) {
    const near = ({ spot }: { readonly spot: Spot }) =>
      Math.hypot(spot[0] - place.spot[0], spot[1] - place.spot[1]) < SHARED;
    if (weight(place.position) >= 10 || !shown.some(near)) shown.push(place);
  }
  return shown.toReversed().flatMap(({ position, spot: [cx, cy] }): Mark[] => {
    const state = states[position.id];
    const isSelected = position.id === selected;
    const size = isSelected ? SIZES.selected : hasFinding(state) ? SIZES.finding : SIZES.plain;
    const mark: GradeMark = { ...gradeOfState(state), cx, cy, size };
    const ring: Mark = { kind: "circle", cx, cy, r: 18, stroke: { colour: "accent", width: strokes.selected } };
    return isSelected ? [mark, ring] : [mark];
  });
}

/**
 * The break lines, and what is to be said of the drawing: that it is shortened, the wheelbase, the rung.
 * @param clear half width about the centre line that something else covers, page units
 */
export function drawLeftOut(family: Family, { view, left, right }: UndersideLayout, clear = 0): readonly Mark[] {
  const wheelbase = `wheelbase ${Math.round(mmFromMetres(family.wheelbase))}${assumedMark(family, "wheelbase")}`;
  const said = familyRungWords(family);
  const area = clear > 0 ? { x: left + 6, width: view.centreX - clear - left - 22 } : { width: right - left };
  if (view.break === null) {
    const y = view.y((family.front.wheel.centre[0] + family.rear.wheel.centre[0]) / 2);
    return notes(view.centreX, y, [wheelbase, ...said], area);
  }
  const [y0, y1] = [view.y(view.break.front), view.y(view.break.rear)];
  const words = [`drawn shortened here; ${wheelbase}`, ...said];
  return [...drawBreakLines(left, right, y0, y1), ...notes(view.centreX, (y0 + y1) / 2, words, area)];
}

/** Short notes about a middle height, on one line where they fit, else one below the other; centred, or from x on. */
function notes(
  centre: number,
  middle: number,
  words: readonly string[],
  area: { readonly x?: number; readonly width: number },
): readonly Mark[] {
  const joined = words.join("; ");
  const fits = computeStyleWidth(joined, "note") <= area.width;
  const lines = fits ? [joined] : words.flatMap((text) => wrapText(text, area.width, "note"));
  const pitch = 16;
  return lines.map((text, i) => ({
    kind: "text",
    x: area.x ?? centre,
    y: middle + 4.5 + (i - (lines.length - 1) / 2) * pitch,
    text,
    style: "note",
    anchor: area.x === undefined ? "middle" : "start",
    halo: true,
  }));
}

/** Sides in words at both ends of the track dimension, in front and behind. */
export function drawSides(family: Family, { view, headY, footY }: UndersideLayout): readonly Mark[] {
  const row = (axle: Axle, y: number): readonly Mark[] => {
    const half = (axle.track / 2) * view.scale;
    const word = axle.name === "front" ? "Front" : "Rear";
    const [x0, x1] = [view.centreX - half, view.centreX + half];
    const track = trackWords(family, axle);
    const beside = Math.max(30, computeStyleWidth(track, "dimension") / 2 + 10);
    const line = (from: number, to: number): Mark => ({
      kind: "path",
      d: polyline([
        [from, y],
        [to, y],
      ]),
      stroke: hairline,
    });
    const text = (x: number, words: string, style: "label-bold" | "dimension"): Mark => ({
      kind: "text",
      x,
      y: y + 4.5,
      text: words,
      style,
      anchor: "middle",
      halo: true,
    });
    return [
      text(x0, `${word} right`, "label-bold"),
      text(x1, `${word} left`, "label-bold"),
      line(x0 + 48, view.centreX - beside),
      line(view.centreX + beside, x1 - 44),
      drawArrow([x0 + 46, y], Math.PI),
      drawArrow([x1 - 42, y], 0),
      text(view.centreX, track, "dimension"),
    ];
  };
  return [...row(family.front, headY), ...row(family.rear, footY)];
}

/** A track in mm; one nobody has entered is called assumed. */
function trackWords(family: Family, { name, track }: Axle): string {
  return `${Math.round(mmFromMetres(track))}${assumedMark(family, `${name}-track`)}`;
}

function describe(family: Family, positions: readonly Position[], states: PositionStates | null): string {
  const axles = [family.front, family.rear].map((axle) => {
    const words = rungWords(axle);
    return `${axle.name} ${axle.layout === "bodies" ? "several bodies" : axle.layout}, track ${trackWords(family, axle)} mm${words === null ? "" : `, ${words}`}`;
  });
  const seen =
    states === null
      ? ""
      : ` ${positions.filter(({ id }) => states[id] !== undefined).length} of ${positions.length} places looked at.`;
  return `The car seen from below, front up, its left side at the right of the page: ${axles.join("; ")}.${seen}`;
}
