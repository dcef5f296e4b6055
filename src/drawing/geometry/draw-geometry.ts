import type { FaultEffect, WheelPose } from "#casework";
import { axleAndSide, type Family, positionsOf } from "#vehicle";
import { partOf } from "../below/part-of.ts";
import { polyline, type Spot } from "../path.ts";
import type { FormatFigure } from "../plot/format-figure.ts";
import { scaleWords } from "../scale-words.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { thinLine } from "../symbols/look.ts";
import { wrapText } from "../text-width.ts";
import { faces, strokes } from "../tokens.ts";
import { fullName } from "../underside/position-labels.ts";
import { rungWords } from "../underside/rung-words.ts";
import { drawCornerView, drawGhost, drawWheelOutline } from "./draw-corner-view.ts";
import { faultWords } from "./fault-words.ts";
import { moveCorner } from "./moved-corner.ts";
import {
  type Arrangement,
  alignViews,
  type CornerReach,
  cornerReach,
  type GeometryView,
  TOE_WORDS,
  type ViewName,
} from "./views.ts";

export interface GeometryOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly format: FormatFigure;
  /** The wheel at other travels, drawn thin. */
  readonly ghosts?: readonly WheelPose[];
  /** Absent = "angle". */
  readonly arrangement?: Arrangement;
  /** Write the sentence into the free quarter; absent = yes. */
  readonly sentence?: boolean;
}

/** Angles are drawn enlarged, at most so far that the line leans by this much, radians. */
const MOST_LEAN = 0.6;
const FACTORS = [25, 10, 5, 2, 1] as const;
/** Half length of a toe line, metres. */
const TOE_REACH = 0.36;
const EDGE = 24;

/**
 * A corner in three aligned views, its wheel in the faulty pose, the sound one as a thin outline, other travels as ghosts,
 * the faulty part in the accent and ringed, and the toe of both drawn enlarged with the factor written.
 */
export function drawGeometry(family: Family, effect: FaultEffect, options: GeometryOptions): Scene {
  const { width, height, type = "desk" } = options;
  const { axle: axleName, side } = axleAndSide(effect.question.corner);
  const axle = family[axleName];
  const { condition, position: positionId, fault } = effect.question;
  const position = positionsOf(family).find(({ id }) => id === positionId);
  const size = { radius: axle.wheel.loadedRadius, rimRadius: axle.wheel.rimDiameter / 2, width: axle.wheel.tyreWidth };
  const arrangement = options.arrangement ?? "angle";
  const reach = cornerReach(axle, side);
  const area = { x: EDGE, y: 8, width: width - 2 * EDGE, height: height - (arrangement === "row" ? 16 : 70) };
  const views = alignViews(reach, side, area, arrangement);
  const moved = moveCorner(axle, side, effect.faulty, condition.rack);
  const sound = moveCorner(axle, side, effect.sound, condition.rack);
  const ghosts = (options.ghosts ?? []).map((pose) => moveCorner(axle, side, pose, condition.rack));
  const shape = {
    moved,
    size,
    coilDiameter: axle.spring.coilDiameter,
    wireDiameter: axle.spring.wireDiameter,
    damperDiameter: axle.damper.tubeDiameter,
    isStrut: axle.strut !== undefined,
    footOnKnuckle: axle.strut !== undefined || axle.damper.seat.on === "knuckle",
    faultyPart: position === undefined ? "" : (partOf(axle, position) ?? ""),
  };
  const all = [views.behind, views.side, views.above];
  const marks: Mark[] = [
    ...drawGround(views, sound.groundZ, arrangement === "row" ? views.above.corner[0] - 20 : width - EDGE),
  ];
  for (const view of all) {
    marks.push(...ghosts.flatMap((ghost) => drawGhost(view, ghost, size)));
    marks.push(...drawWheelOutline(view, sound, size, thinLine), ...drawCornerView(view, shape));
  }
  if (position !== undefined && position.at !== null) {
    const joint =
      position.joint?.end === "outer" ? moved.links.find(({ name }) => name === position.joint?.link) : null;
    marks.push(
      ...drawRing(all, joint?.outer ?? position.at, moved, `${shortName(position.label)}, ${faultWords(fault)}`),
    );
  }
  marks.push(...drawToe(views.above, effect, side, options, reach), ...all.map(title));
  const free = freeQuarter(views, width, height);
  if (arrangement === "angle" && options.sentence !== false) marks.push(...drawSentence(free, effect.sentence, type));
  const rung = rungWords(axle);
  return {
    width,
    height,
    type,
    title: position === undefined ? family.name : `${fullName(position)}: ${faultWords(fault)}`,
    description: `Three views of the corner: from behind, from the ${side}, from above. ${effect.sentence}${rung === null ? "" : ` The axle is ${rung}.`}`,
    marks,
    targets: [],
    ...(arrangement === "angle" ? { free } : {}),
    scale: scaleWords(views.above.scale),
  };
}

const title = (view: GeometryView): Mark => ({
  kind: "text",
  x: view.corner[0],
  y: view.corner[1] + 12,
  text: view.title,
  style: "label-bold",
  halo: true,
});

const shortName = (label: string): string => {
  const last = label.split(", ").at(-1) ?? label;
  return last.charAt(0).toLowerCase() + last.slice(1);
};

function drawGround(views: Readonly<Record<ViewName, GeometryView>>, z: number, x1: number): readonly Mark[] {
  const y = views.behind.spot([0, 0, z])[1];
  const x0 = views.behind.corner[0] - 8;
  return [
    {
      kind: "path",
      d: polyline([
        [x0, y],
        [x1, y],
      ]),
      stroke: thinLine,
    },
    { kind: "text", x: x1, y: y - 5, text: "ground", style: "note", anchor: "end", halo: true },
  ];
}

/** The faulty place ringed in the view where it stands freest, with its words on a leader into the free quarter. */
function drawRing(
  views: readonly GeometryView[],
  at: readonly [number, number, number?],
  moved: ReturnType<typeof moveCorner>,
  words: string,
): readonly Mark[] {
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
  const best = views.filter(({ name }) => name !== "above").toSorted((a, b) => freedom(b) - freedom(a))[0];
  if (best === undefined) return rings;
  const [cx, cy] = best.spot(at);
  const low = best.spot([0, 0, 0])[1] + 24;
  const knee: Spot = [cx + Math.min((low - cy) * 0.5, 70), low];
  const angle = Math.atan2(knee[1] - cy, knee[0] - cx);
  const start: Spot = [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  return [
    ...rings.filter((_, i) => views[i] !== best),
    { kind: "circle", cx, cy, r: radius, stroke: { colour: "accent", width: strokes.selected } },
    { kind: "path", d: polyline([start, knee, [knee[0] + 12, knee[1]]]), stroke: { colour: "accent", width: 1.2 } },
    { kind: "text", x: knee[0] + 18, y: knee[1] + 4.5, text: words, style: "label-accent", halo: true },
  ];
}

/** What can be said of toe: both angles, or only the difference, or nothing, as far as their signs are sure. */
function toeToDraw(
  effect: FaultEffect,
  format: FormatFigure,
): {
  readonly lines: readonly { readonly toe: number; readonly colour: "ink" | "g3" }[];
  readonly words: readonly { readonly text: string; readonly colour: "ink" | "g3" }[];
  readonly note: (factor: number) => string;
} {
  const { headline, figures, question } = effect;
  const [sound, faulty] = ["toe-sound", "toe-faulty"].map((key) => figures.find((figure) => figure.key === key));
  const kind = question.fault.kind;
  if (sound?.signSure === true && faulty?.signSure === true) {
    return {
      lines: [
        { toe: effect.sound.toe, colour: "ink" },
        { toe: effect.faulty.toe, colour: "g3" },
      ],
      words: [
        { text: `${format(faulty)} ${kind}`, colour: "g3" },
        { text: `${format(sound)} sound`, colour: "ink" },
      ],
      note: (factor) => `toe, in is +, angle drawn ${factor} times`,
    };
  }
  if (!headline.signSure) return { lines: [], words: [], note: () => "toe not drawn: its sign is not sure" };
  const size = format({ ...headline, value: Math.abs(headline.value) });
  return {
    lines: [
      { toe: 0, colour: "ink" },
      { toe: effect.faulty.toe - effect.sound.toe, colour: "g3" },
    ],
    words: [
      { text: `${size} further ${headline.value < 0 ? "out" : "in"}, ${kind}`, colour: "g3" },
      { text: "sound", colour: "ink" },
    ],
    note: (factor) => `the difference only, drawn ${factor} times`,
  };
}

/** Toe of the sound and of the faulty wheel as lines through its centre, enlarged. */
function drawToe(
  view: GeometryView,
  effect: FaultEffect,
  side: "left" | "right",
  options: GeometryOptions,
  reach: CornerReach,
): readonly Mark[] {
  const inward = side === "left" ? 1 : -1;
  const { lines, words, note } = toeToDraw(effect, options.format);
  const largest = Math.max(...lines.map(({ toe }) => Math.abs(toe)), 1e-6);
  const factor = FACTORS.find((candidate) => candidate * largest <= MOST_LEAN) ?? 1;
  const [cx, cy] = view.spot(effect.sound.centre);
  const length = TOE_REACH * view.scale;
  const drawn = lines.map(({ toe, colour }): Mark => {
    const lean = toe * factor;
    const [dx, dy] = [inward * Math.sin(lean) * length, Math.cos(lean) * length];
    const d = polyline([
      [cx - dx * 0.9, cy + dy * 0.9],
      [cx + dx, cy - dy],
    ]);
    return { kind: "path", d, stroke: { colour, width: colour === "ink" ? 1.4 : 2, dash: [14, 3, 2, 3] } };
  });
  const type = options.type ?? "desk";
  const pitch = faces[type].label.size * 1.15;
  const inRow = options.arrangement === "row";
  const noteWords = inRow ? wrapText(note(factor), TOE_WORDS - 8, "note", type) : [note(factor)];
  const texts = [
    ...words.map(({ text, colour }) => ({ text, colour, style: "label-bold" as const })),
    ...noteWords.map((text) => ({ text, colour: "ink3" as const, style: "note" as const })),
  ];
  const beside = view.spot([reach.x[1], reach.y[0]]);
  const toLeft = inRow || side === "left";
  const x = inRow ? beside[0] + 12 : cx + (toLeft ? 6 : -6);
  const top = inRow ? beside[1] + 24 : cy + length * 0.9 + 16;
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

type Area = NonNullable<Scene["free"]>;

/** The quarter the three views leave free, at the lower right. */
function freeQuarter(views: Readonly<Record<ViewName, GeometryView>>, width: number, height: number): Area {
  const x = views.side.corner[0] + 12;
  const y = views.above.corner[1] + 40;
  return { x, y, width: width - EDGE - x, height: height - y - 8 };
}

function drawSentence(free: Area, sentence: string, type: TypeScale): readonly Mark[] {
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
