import { type Axle, type Position, type Side, seatAtRideHeight } from "#vehicle";
import { bentLine, polygon } from "../path.ts";
import { between, type CarPoint, onSide } from "../projection.ts";
import { drawBrake } from "../symbols/brake.ts";
import { drawBush } from "../symbols/bush.ts";
import { drawCoilFromBelow } from "../symbols/coil.ts";
import { drawDamper } from "../symbols/damper.ts";
import { strokeOf } from "../symbols/look.ts";
import { drawTube } from "../symbols/tube.ts";
import { drawWheel } from "../symbols/wheel.ts";
import { type CornerPart, meanHeight } from "./corner-part.ts";

/** Spring and damper, or the strut that is both. */
export function springParts(axle: Axle, side: Side): readonly CornerPart[] {
  const { spring, damper } = axle;
  const seat = onSide(side, seatAtRideHeight(axle.links, spring.seat));
  const top = onSide(side, spring.body.at);
  const foot = onSide(side, axle.strut?.axisPoint.at ?? seatAtRideHeight(axle.links, damper.seat));
  const damperTop = onSide(side, axle.strut?.top.at ?? damper.body.at);
  const onLink = spring.seat.on === "link" ? spring.seat.link : null;
  const carrier = axle.links.find((link) => link.name === onLink);
  return [
    {
      name: "spring",
      sheet: "lower",
      height:
        carrier === undefined ? meanHeight([seat, top]) : meanHeight([carrier.inner.at, carrier.outer.at]) - 0.001,
      lines: [],
      draw: (view, lookOf) =>
        drawCoilFromBelow(
          view,
          { seat, top, diameter: spring.coilDiameter, wire: spring.wireDiameter },
          lookOf("spring"),
        ),
    },
    {
      name: "damper",
      sheet: "upper",
      height: meanHeight([foot, damperTop]),
      lines: [[foot, damperTop]],
      draw: (view, lookOf) =>
        drawDamper(
          view,
          { foot, top: damperTop, tubeDiameter: damper.tubeDiameter, eye: axle.strut === undefined ? 0.027 : 0 },
          lookOf("damper"),
        ),
    },
  ];
}

/** Wheel, brake and hub. */
export function wheelPart(axle: Axle, side: Side): CornerPart {
  const { wheel, brake } = axle;
  const centre = onSide(side, wheel.centre);
  return {
    name: "tyre",
    sheet: "both",
    height: wheel.centre[2],
    lines: [],
    draw: (view, lookOf) => [
      ...drawWheel(
        view,
        {
          centre,
          side,
          tyreRadius: wheel.freeRadius,
          tyreWidth: wheel.tyreWidth,
          rimRadius: wheel.rimDiameter / 2,
          rimWidth: wheel.rimWidth,
          offset: wheel.rimOffset,
        },
        lookOf("tyre"),
      ),
      ...drawBrake(
        view,
        {
          centre,
          side,
          discRadius: brake.discDiameter / 2,
          discThickness: brake.discThickness,
          vented: brake.vented,
          flange: wheel.rimOffset,
          ringOuter: wheel.rimOffset - brake.hatDepth,
          padThickness: brake.padThickness,
          caliperAt: brake.caliperAt,
        },
        { disc: lookOf("disc"), pads: lookOf("pads"), caliper: lookOf("caliper"), hub: lookOf("hub") },
      ),
    ],
  };
}

/** A run of points from the middle of the car outward, begun no nearer to it than `from`. */
function clipRun(run: readonly CarPoint[], from: number): readonly CarPoint[] {
  const first = run.findIndex(([, y]) => y >= from);
  const [before, after] = [run[first - 1], run[first]];
  if (before === undefined || after === undefined) return run;
  const share = (from - before[1]) / (after[1] - before[1] || 1);
  return [between(before, after, share), ...run.slice(first)];
}

/** Anti-roll bar and its link, begun `from` the middle of the car. */
export function barParts(axle: Axle, side: Side, from: number): readonly CornerPart[] {
  const { bar } = axle;
  if (bar === undefined) return [];
  const path = clipRun(bar.path, from).map((p) => onSide(side, p));
  const bodyBush = onSide(side, bar.bodyBush);
  const ends = [onSide(side, bar.linkUpper), onSide(side, bar.linkLower)];
  return [
    {
      name: "bar",
      sheet: "lower",
      height: meanHeight(path),
      lines: [path],
      draw: (view, lookOf) => {
        const look = lookOf("bar");
        const end = path.at(-1);
        return [
          ...drawTube(
            view,
            { runs: [path], width: bar.diameter, eyes: end === undefined ? [] : [{ at: end, radius: 0.018 }] },
            look,
          ),
          ...drawBush(
            view,
            { at: bodyBush, axis: [0, 1, 0], length: 0.042, diameter: bar.diameter + 0.022 },
            { ...look, unseen: false },
          ),
        ];
      },
    },
    {
      name: "bar-link",
      sheet: "lower",
      height: meanHeight(path) - 0.002,
      lines: [],
      draw: (view, lookOf) =>
        drawTube(
          view,
          { runs: [ends], width: 0.012, eyes: ends.map((at) => ({ at, radius: 0.016 })) },
          lookOf("bar-link"),
        ),
    },
  ];
}

/** Drive shaft of a driven axle. */
export function driveParts(axle: Axle, side: Side, from: number): readonly CornerPart[] {
  if (!axle.driven) return [];
  const [wx, wy, wz] = axle.wheel.centre;
  const at = (y: number) => onSide(side, [wx, y, wz]);
  const start = Math.max(0.128, from);
  const eyes = [
    { at: at(start + 0.05), radius: 0.04 },
    { at: at(wy - 0.14), radius: 0.038 },
  ];
  return [
    {
      name: "drive-shaft",
      sheet: "upper",
      height: wz + 0.05,
      lines: [[at(start + 0.05), at(wy - 0.14)]],
      draw: (view, lookOf) =>
        drawTube(
          view,
          { runs: [[at(start), at(wy - 0.08)]], width: 0.026, eyes },
          { ...lookOf("drive-shaft"), colour: "ink2" },
        ),
    },
  ];
}

/** Hose and level sensor stand where their positions lie. */
export function smallParts(axle: Axle, side: Side, positions: readonly Position[]): readonly CornerPart[] {
  const own = positions.filter(
    (position) => position.axle === axle.name && position.side === side && position.at !== null,
  );
  const inward = side === "left" ? -1 : 1;
  const toward = axle.brake.caliperAt === "front" ? 1 : -1;
  return own.flatMap(({ kind, at }): CornerPart[] => {
    if (at === null) return [];
    const [x, y, z] = at;
    if (kind === "hose") {
      const [from, bend, to] = [
        [x + toward * 0.03, y - inward * 0.07],
        [x + toward * 0.01, y + inward * 0.02],
        [x - toward * 0.03, y + inward * 0.05],
      ] as const;
      return [
        {
          name: "hose",
          sheet: "upper",
          height: z,
          lines: [],
          draw: (view, lookOf) => [
            {
              kind: "path",
              d: bentLine(view.spot(from), view.spot(bend), view.spot(to)),
              stroke: { ...strokeOf(lookOf("hose")), cap: "round" },
            },
          ],
        },
      ];
    }
    if (kind !== "level-sensor") return [];
    const box = [
      [x + 0.018, y - 0.02],
      [x + 0.018, y + 0.02],
      [x - 0.018, y + 0.02],
      [x - 0.018, y - 0.02],
    ] as const;
    return [
      {
        name: "level-sensor",
        sheet: "upper",
        height: z - 0.02,
        lines: [],
        draw: (view, lookOf) => [
          {
            kind: "path",
            d: polygon(box.map((p) => view.spot(p))),
            stroke: strokeOf(lookOf("level-sensor")),
            fill: "paper",
          },
        ],
      },
    ];
  });
}
