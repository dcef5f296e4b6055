import type { FaultEffect, WheelPose } from "#casework";
import { axleAndSide, type Family, type Position, positionsOf } from "#vehicle";
import { partOf } from "../below/part-of.ts";
import type { Segment } from "../labels/crossing.ts";
import { polyline, type Spot } from "../path.ts";
import type { FormatFigure } from "../plot/format-figure.ts";
import { scaleWords } from "../scale-words.ts";
import type { Colour, Mark, Scene, TextStyle, TypeScale } from "../scene.ts";
import { thinLine } from "../symbols/look.ts";
import { computeStyleWidth, shortenText, wrapText } from "../text-width.ts";
import { faces, stateColours, strokes } from "../tokens.ts";
import { fullName } from "../underside/position-labels.ts";
import { rungWords } from "../underside/rung-words.ts";
import { cornerShape, drawCornerView, drawGhost, drawWheelOutline } from "./draw-corner-view.ts";
import { drawInQuarter } from "./draw-in-quarter.ts";
import type { EyePlace } from "./draw-turned-corner.ts";
import { moveCorner } from "./moved-corner.ts";
import { drawGroundLine, EDGE, type FreeQuarter, freeQuarter, titleView } from "./view-frame.ts";
import { type Arrangement, alignViews, type CornerReach, cornerReach, type GeometryView, TOE_WORDS } from "./views.ts";

export interface GeometryOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly format: FormatFigure;
  /** The wheel at other travels, drawn thin. */
  readonly ghosts?: readonly WheelPose[];
  /** The corner in other states at this travel, drawn thin over it; where there are any, no other travel is drawn. */
  readonly beside?: readonly WheelPose[];
  /** Absent = "angle". */
  readonly arrangement?: Arrangement;
  /** From where the corner is seen in space in the quarter the sheets leave free; absent: the sentence stands there. */
  readonly eye?: EyePlace;
}

/** How many times an angle may be drawn larger than it is; the largest whose lines stay inside the view is taken. */
const FACTORS = [25, 20, 15, 10, 8, 5, 4, 3, 2, 1] as const;
/** Half length of a toe line, metres, and the part of it behind the wheel centre. */
const TOE_REACH = 0.36;
const TOE_BEHIND = 0.9;
/** From the knee of a leader to its words. */
const TO_WORDS = 18;

/**
 * A corner in three aligned views, its wheel as the fault lets it stand, the sound one as a thin outline, other travels as
 * ghosts, the part in question in the accent and ringed, and the toe of both drawn enlarged with the factor written.
 */
export function drawGeometry(family: Family, effect: FaultEffect, options: GeometryOptions): Scene {
  const { width, height, type = "desk" } = options;
  const { axle: axleName, side } = axleAndSide(effect.question.corner);
  const axle = family[axleName];
  const { condition, position: positionId } = effect.question;
  const position = positionsOf(family).find(({ id }) => id === positionId);
  const arrangement = options.arrangement ?? "angle";
  const area = { x: EDGE, y: 8, width: width - 2 * EDGE, height: height - (arrangement === "row" ? 16 : 70) };
  const moved = moveCorner(axle, side, effect.faulty, condition.rack);
  const sound = moveCorner(axle, side, effect.sound, condition.rack);
  const { beside = [] } = options;
  const ghosts = (beside.length > 0 ? beside : (options.ghosts ?? [])).map((pose) =>
    moveCorner(axle, side, pose, condition.rack),
  );
  const reach = cornerReach(axle, side, [moved, sound, ...ghosts]);
  const views = alignViews(reach, side, area, arrangement);
  const part = position === undefined ? "" : (partOf(axle, position) ?? "");
  const shape = cornerShape(axle, moved, part);
  const { size } = shape;
  const all = [views.behind, views.side, views.above];
  const marks: Mark[] = [];
  for (const view of all) {
    marks.push(...ghosts.flatMap((ghost) => drawGhost(view, ghost, size)));
    marks.push(...drawWheelOutline(view, sound, size, thinLine), ...drawCornerView(view, shape));
  }
  const end = arrangement === "row" ? views.above.corner[0] - 14 : width - EDGE;
  const ring =
    position === undefined
      ? null
      : ringOf(all, position, moved, { words: `${shortName(position.label)}, ${effect.inWords}`, reach, end, type });
  marks.push(...drawGroundLine(views, sound.groundZ, end, reach, ring?.leader ?? null), ...(ring?.marks ?? []));
  marks.push(
    ...drawToe(views.above, effect, options, { side, reach, ring: ring?.fromAbove ?? null }),
    ...all.map((view) => titleView(view, arrangement === "row" && view.name !== "above" ? end : width - 4, type)),
  );
  const free = freeQuarter(views, width, height);
  if (arrangement === "angle") {
    const { corner } = effect.question;
    const standing = { family, corner, pose: effect.faulty, rack: condition.rack, beside: [], part };
    marks.push(
      ...(options.eye
        ? drawInQuarter(standing, { free, plan: views.above }, options.eye, type)
        : drawSentence(free, effect.sentence, type)),
    );
  }
  const rung = rungWords(axle);
  return {
    width,
    height,
    type,
    title: position === undefined ? family.name : `${fullName(position)}: ${effect.inWords}`,
    description: `Three views of the corner: from behind, from the ${side}, from above${options.eye ? ", and in space" : ""}. ${effect.sentence}${rung === null ? "" : ` The axle is ${rung}.`}`,
    marks,
    targets: [],
    ...(arrangement === "angle" ? { free } : {}),
    scale: scaleWords(views.above.scale),
  };
}

const shortName = (label: string): string => {
  const last = label.split(", ").at(-1) ?? label;
  return last.charAt(0).toLowerCase() + last.slice(1);
};

/** A ring on the page. */
interface Ring {
  readonly at: Spot;
  readonly r: number;
}

interface RingWords {
  readonly words: string;
  readonly reach: CornerReach;
  /** The words end before this, page units. */
  readonly end: number;
  readonly type: TypeScale;
}

/** The place of the fault ringed in all views, boldly where it stands freest, with its words on a leader under the ground. */
function ringOf(
  views: readonly GeometryView[],
  position: Position,
  moved: ReturnType<typeof moveCorner>,
  { words, reach, end, type }: RingWords,
): { readonly marks: readonly Mark[]; readonly leader: Segment | null; readonly fromAbove: Ring | null } | null {
  const joint = position.joint?.end === "outer" ? moved.links.find(({ name }) => name === position.joint?.link) : null;
  const at = joint?.outer ?? position.at;
  if (at === null) return null;
  const others = moved.links.flatMap(({ inner, outer }) => [inner, outer]);
  const freedom = (view: GeometryView): number => {
    const [x, y] = view.spot(at);
    const far = others
      .map((other) => view.spot(other))
      .map(([ox, oy]) => Math.hypot(ox - x, oy - y))
      .filter((distance) => distance > 3);
    return Math.min(...far);
  };
  const radius = Math.max(8, Math.min(18, 0.052 * (views[0]?.scale ?? 0)));
  const rings = views.map((view): Mark => {
    const [cx, cy] = view.spot(at);
    return { kind: "circle", cx, cy, r: radius * 0.8, stroke: { colour: "accent", width: 1.4 } };
  });
  const above = views.find(({ name }) => name === "above");
  const fromAbove = above === undefined ? null : { at: above.spot(at), r: radius };
  const best = views.filter(({ name }) => name !== "above").toSorted((a, b) => freedom(b) - freedom(a))[0];
  if (best === undefined) return { marks: rings, leader: null, fromAbove };
  const [cx, cy] = best.spot(at);
  const low = best.spot([0, 0, reach.z[0]])[1] + 15;
  const lean = Math.min((low - cy) * 0.5, 70);
  const said = shortenText(words, end - EDGE - 2 * TO_WORDS, "label-accent", type);
  const width = computeStyleWidth(said, "label-accent", type);
  const onRight = cx + lean + TO_WORDS + width <= end;
  const onLeft = cx - lean - TO_WORDS - width >= EDGE;
  const sign = onRight || !onLeft ? 1 : -1;
  // Where neither side has room for the usual lean, the words end at the edge and the leader reaches their beginning.
  const kneeX = onRight || onLeft ? cx + sign * lean : end - width - TO_WORDS;
  const knee: Spot = [kneeX, low];
  const angle = Math.atan2(knee[1] - cy, knee[0] - cx);
  const start: Spot = [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  const marks: readonly Mark[] = [
    ...rings.filter((_, i) => views[i] !== best),
    { kind: "circle", cx, cy, r: radius, stroke: { colour: "accent", width: strokes.selected } },
    {
      kind: "path",
      d: polyline([start, knee, [knee[0] + sign * 12, knee[1]]]),
      stroke: { colour: "accent", width: 1.2 },
    },
    {
      kind: "text",
      x: knee[0] + sign * TO_WORDS,
      y: knee[1] + 4.5,
      text: said,
      style: "label-accent",
      anchor: sign === 1 ? "start" : "end",
      halo: true,
    },
  ];
  return { marks, leader: [start, knee], fromAbove };
}

/** What can be said of toe: both angles, or only the difference, or nothing, as far as their signs are sure. */
function toeToDraw(
  effect: FaultEffect,
  format: FormatFigure,
): {
  readonly lines: readonly { readonly toe: number; readonly colour: Colour }[];
  readonly words: readonly { readonly text: string; readonly colour: Colour }[];
  readonly note: (factor: number) => string;
} {
  const { headline, figures, question } = effect;
  const [sound, other] = ["toe-sound", "toe-faulty"].map((key) => figures.find((figure) => figure.key === key));
  const kind = question.fault.kind;
  const colour = stateColours[kind];
  if (sound?.signSure === true && other?.signSure === true) {
    return {
      lines: [
        { toe: effect.sound.toe, colour: "ink" },
        { toe: effect.faulty.toe, colour },
      ],
      words: [
        { text: `${format(other)} ${kind}`, colour },
        { text: `${format(sound)} sound`, colour: "ink" },
      ],
      note: (factor) => (factor === 1 ? "toe, in is +, angle as it is" : `toe, in is +, angle drawn ${factor} times`),
    };
  }
  if (!headline.signSure) return { lines: [], words: [], note: () => "toe not drawn: its sign is not sure" };
  const size = format({ ...headline, value: Math.abs(headline.value) });
  return {
    lines: [
      { toe: 0, colour: "ink" },
      { toe: effect.faulty.toe - effect.sound.toe, colour },
    ],
    words: [
      { text: `${size} further ${headline.value < 0 ? "out" : "in"}, ${kind}`, colour },
      { text: "sound", colour: "ink" },
    ],
    note: (factor) => (factor === 1 ? "the difference only, as it is" : `the difference only, drawn ${factor} times`),
  };
}

/** Room a view gives a toe line about the wheel centre, page units: across to either side, ahead and behind. */
function toeRoom(view: GeometryView, reach: CornerReach, [cx, cy]: Spot) {
  const [x0, y0] = view.spot([reach.x[1], reach.y[1]]);
  const [x1, y1] = view.spot([reach.x[0], reach.y[0]]);
  return { across: Math.min(cx - x0, x1 - cx), ahead: cy - y0, behind: y1 - cy };
}

interface ToePlace {
  readonly side: "left" | "right";
  readonly reach: CornerReach;
  /** What the words of the lines must not run over. */
  readonly ring: Ring | null;
}

/** Between a ring and words beside it. */
const BESIDE_RING = 8;
/** Words beside a ring need this much room; where there is less they stay under the wheel. */
const LEAST_BESIDE = 120;

/** Toe of the sound wheel and of the other one as lines through its centre, as much enlarged as the view has room for. */
function drawToe(
  view: GeometryView,
  effect: FaultEffect,
  options: GeometryOptions,
  { side, reach, ring }: ToePlace,
): readonly Mark[] {
  const inward = side === "left" ? 1 : -1;
  const { lines, words, note } = toeToDraw(effect, options.format);
  const largest = Math.max(...lines.map(({ toe }) => Math.abs(toe)), 1e-6);
  const [cx, cy] = view.spot(effect.sound.centre);
  const room = toeRoom(view, reach, [cx, cy]);
  const length = Math.min(TOE_REACH * view.scale, room.ahead, room.behind / TOE_BEHIND);
  const inside = (factor: number) => factor * largest < 1 && Math.sin(factor * largest) * length <= room.across;
  const factor = FACTORS.find(inside) ?? 1;
  const drawn = lines.map(({ toe, colour }): Mark => {
    const lean = toe * factor;
    const [dx, dy] = [inward * Math.sin(lean) * length, Math.cos(lean) * length];
    const d = polyline([
      [cx - dx * TOE_BEHIND, cy + dy * TOE_BEHIND],
      [cx + dx, cy - dy],
    ]);
    return { kind: "path", d, stroke: { colour, width: colour === "ink" ? 1.4 : 2, dash: [14, 3, 2, 3] } };
  });
  const type = options.type ?? "desk";
  const pitch = faces[type].label.size * 1.15;
  const inRow = options.arrangement === "row";
  const beside = view.spot([reach.x[1], reach.y[0]]);
  const toLeft = inRow || side === "left";
  const usual = inRow ? beside[0] + 12 : cx + (toLeft ? 6 : -6);
  const under = cy + length * TOE_BEHIND;
  const inTheWay =
    ring !== null && !inRow && ring.at[1] + ring.r > under && (ring.at[0] - usual) * (toLeft ? 1 : -1) > 0;
  const roomFrom = (x: number): number => (inRow ? TOE_WORDS - 12 : toLeft ? options.width - 4 - x : x - 4);
  const aside = inTheWay ? ring.at[0] + (toLeft ? 1 : -1) * (ring.r + BESIDE_RING) : usual;
  const x = roomFrom(aside) < LEAST_BESIDE ? usual : aside;
  const wide = roomFrom(x);
  const wrapped = <S extends TextStyle, C extends Colour>(text: string, style: S, colour: C) =>
    wrapText(text, wide, style, type).map((line) => ({ text: line, style, colour }));
  const texts = [
    ...words.flatMap(({ text, colour }) => wrapped(text, "label-bold", colour)),
    ...wrapped(note(factor), "note", "ink3"),
  ];
  const lowest = options.height - 6 - (texts.length - 1) * pitch;
  const top = inRow ? beside[1] + 24 : Math.min(under + 16, lowest);
  return [
    ...drawn,
    ...texts.map(
      ({ text, style, colour }, i): Mark => ({
        kind: "text",
        x,
        y: top + i * pitch,
        text,
        style,
        colour,
        anchor: toLeft ? "start" : "end",
        halo: true,
      }),
    ),
  ];
}

function drawSentence(free: FreeQuarter, sentence: string, type: TypeScale): readonly Mark[] {
  const style = free.width > 280 ? "sentence" : "large";
  const { size } = faces[type][style];
  return wrapText(sentence, free.width, style, type).map((text, i) => ({
    kind: "text",
    x: free.x,
    y: free.y + size + i * size * 1.3,
    text,
    style,
  }));
}
