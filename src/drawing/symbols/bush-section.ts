import { circlePath, polygon, polyline, type Spot } from "../path.ts";
import type { Mark } from "../scene.ts";
import { dashes } from "../tokens.ts";
import { hairline, inkLine } from "./look.ts";

/** What a section shows: a bush that is sound, torn, loose or firmer, or a ball joint with or without play. */
export type SectionState = "sound" | "torn" | "loose" | "firmer";

const DEGREE = Math.PI / 180;
const polar = ([x, y]: Spot, radius: number, degrees: number): Spot => [
  x + radius * Math.cos(degrees * DEGREE),
  y + radius * Math.sin(degrees * DEGREE),
];
/** Angles from one to the other in even steps, both ends included. */
const sweep = (from: number, to: number, step: number): readonly number[] => {
  const count = Math.max(1, Math.round(Math.abs(to - from) / step));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
};

/** A web of rubber between the outer ring and the inner sleeve, about an angle. */
function web(outer: Spot, ring: number, inner: Spot, sleeve: number, angle: number, half: number): Mark {
  const spots = [
    ...sweep(angle - half, angle + half, 6).map((a) => polar(outer, ring, a)),
    ...sweep(angle + half * 0.85, angle - half * 0.85, 6).map((a) => polar(inner, sleeve, a)),
  ];
  return { kind: "path", d: polygon(spots), stroke: inkLine, fill: "hatch-cut" };
}

/** Heights of a torn edge, in sixtieths of the radius, repeating. */
const JAGS = [0, 3.4, -1.5, 2.6, -3] as const;

/** A web torn through: one half stays on the ring, the other on the sleeve, both with ragged edges. */
function tornWeb(outer: Spot, ring: number, inner: Spot, sleeve: number, r: number): readonly Mark[] {
  const jag = (i: number): number => ((JAGS[i % JAGS.length] ?? 0) * r) / 60;
  const onRing = [
    ...sweep(-54, 54, 6).map((a) => polar(outer, ring, a)),
    ...sweep(50, -50, 8).map((a, i) => polar(outer, ring - r * 0.17 + jag(i), a)),
  ];
  const onSleeve = [
    ...sweep(-46, 46, 6).map((a) => polar(inner, sleeve, a)),
    ...sweep(40, -40, 8).map((a, i) => polar(inner, sleeve + r * 0.13 - jag(i), a)),
  ];
  return [onRing, onSleeve].map((spots) => ({
    kind: "path",
    d: polygon(spots),
    stroke: inkLine,
    fill: "hatch-cut",
  }));
}

const axisCross = ([x, y]: Spot, reach: number): Mark => ({
  kind: "path",
  d: polyline([
    [x - reach, y],
    [x + reach, y],
  ]).concat(
    polyline([
      [x, y - reach],
      [x, y + reach],
    ]),
  ),
  stroke: { ...hairline, dash: dashes.axis },
});

/** Section across a rubber bush of outer radius r (page units): sleeve, rubber, inner sleeve; torn, it hangs off the middle. */
export function drawBushSection(centre: Spot, r: number, state: SectionState): readonly Mark[] {
  const ring = r * 0.9;
  const sleeve = r * 0.36;
  const shift = state === "torn" ? [-0.13, 0.12] : state === "loose" ? [0, 0.09] : [0, 0];
  const inner: Spot = [centre[0] + r * (shift[0] ?? 0), centre[1] + r * (shift[1] ?? 0)];
  const rubber: readonly Mark[] =
    state === "firmer"
      ? [{ kind: "path", d: circlePath(centre, ring), stroke: inkLine, fill: "hatch-cut" }]
      : state === "torn"
        ? [web(centre, ring, inner, sleeve, 180, 54), ...tornWeb(centre, ring, inner, sleeve, r)]
        : [web(centre, ring, centre, sleeve * 1.02, 180, 54), web(centre, ring, centre, sleeve * 1.02, 0, 54)];
  const gap: readonly Mark[] =
    state === "loose" ? [{ kind: "path", d: circlePath(centre, sleeve * 1.28), stroke: inkLine, fill: "paper" }] : [];
  return [
    { kind: "path", d: circlePath(centre, r), fill: "ink" },
    { kind: "path", d: circlePath(centre, ring + 1), fill: "paper" },
    ...rubber,
    ...gap,
    { kind: "path", d: circlePath(inner, sleeve), stroke: { colour: "ink", width: 2 }, fill: "paper" },
    { kind: "path", d: circlePath(inner, sleeve * 0.62), stroke: inkLine },
    axisCross(centre, r + 7),
    {
      kind: "path",
      d: `M${inner[0] - 6} ${inner[1]}H${inner[0] + 6}M${inner[0]} ${inner[1] - 6}V${inner[1] + 6}`,
      stroke: inkLine,
    },
  ];
}

/** Section through a ball joint of housing radius r: housing, ball, stud; loose, the ball has room all round. */
export function drawBallSection(centre: Spot, r: number, state: SectionState): readonly Mark[] {
  const [x, y] = centre;
  const ball = r * (state === "sound" || state === "firmer" ? 0.6 : 0.5);
  const stud = r * 0.2;
  return [
    { kind: "path", d: circlePath(centre, r * 0.86), stroke: { colour: "ink", width: 2 }, fill: "hatch-cut" },
    { kind: "path", d: circlePath(centre, r * 0.62), stroke: inkLine, fill: "paper" },
    {
      kind: "path",
      d: polygon([
        [x - stud, y],
        [x - stud * 0.8, y - r],
        [x + stud * 0.8, y - r],
        [x + stud, y],
      ]),
      stroke: inkLine,
      fill: "paper",
    },
    { kind: "path", d: circlePath(centre, ball), stroke: { colour: "ink", width: 2 }, fill: "paper" },
    axisCross(centre, r + 7),
  ];
}
