import { polygon, polyline, roundedPolygon } from "../path.ts";
import { type CarPoint, onSide, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { hairline, inkLine, type Look, strokeOf } from "./look.ts";

export interface BrakeShape {
  readonly centre: CarPoint;
  readonly side: "left" | "right";
  readonly discRadius: number;
  readonly discThickness: number;
  readonly vented: boolean;
  /** Face of the wheel flange and outer face of the ring, metres outboard of the wheel's middle plane. */
  readonly flange: number;
  readonly ringOuter: number;
  readonly padThickness: number;
  readonly caliperAt: "front" | "rear";
}

export interface BrakeLooks {
  readonly disc: Look;
  readonly pads: Look;
  readonly caliper: Look;
  readonly hub: Look;
}

/** Vanes drawn between the plates of a vented disc. */
const VANES = 17;

/** Disc with hat, pads and caliper, hub with its flange, all cut at hub height. */
export function drawBrake(view: Projection, brake: BrakeShape, looks: BrakeLooks): readonly Mark[] {
  const left = Math.abs(brake.centre[1]);
  const place = (u: number, v: number) => view.spot(onSide(brake.side, [brake.centre[0] + u, left + v]));
  const box = (u0: number, v0: number, u1: number, v1: number) =>
    polygon([place(u1, v0), place(u1, v1), place(u0, v1), place(u0, v0)]);
  const { discRadius: r, ringOuter, discThickness: t, flange } = brake;
  const ringInner = ringOuter - t;
  const marks: Mark[] = [];
  const solid = (d: string, look: Look, fill: "paper" | "hair" = "paper") => {
    marks.push({ kind: "path", d, stroke: strokeOf(look), fill });
    if (look.unseen && fill === "paper") marks.push({ kind: "path", d, fill: "hatch-unseen" });
  };
  if (brake.vented) {
    const plate = t * 0.36;
    solid(box(-r, ringInner, r, ringInner + plate), looks.disc);
    solid(box(-r, ringOuter - plate, r, ringOuter), looks.disc);
    for (let i = 0; i < VANES; i++) {
      const u = -r + 0.008 + (i * (2 * r - 0.016)) / (VANES - 1);
      marks.push({
        kind: "path",
        d: polyline([place(u, ringInner + plate), place(u, ringOuter - plate)]),
        stroke: hairline,
      });
    }
  } else solid(box(-r, ringInner, r, ringOuter), looks.disc);
  const hat = polyline([
    place(0.096, ringOuter),
    place(0.084, flange - 0.002),
    place(-0.084, flange - 0.002),
    place(-0.096, ringOuter),
  ]);
  marks.push({ kind: "path", d: hat, stroke: inkLine });
  const hub = [place(0.044, flange - 0.013), place(0.044, flange - 0.105), place(-0.044, flange - 0.105)];
  solid(roundedPolygon([...hub, place(-0.044, flange - 0.013)], 0.008 * view.scale), looks.hub);
  solid(box(-0.07, flange - 0.014, 0.07, flange - 0.002), looks.hub);

  const q = brake.caliperAt === "front" ? 1 : -1;
  const pad = brake.padThickness;
  const padIn = ringInner - pad;
  const padOut = ringOuter + pad;
  for (const [a, b] of [
    [padIn, ringInner],
    [ringOuter, padOut],
  ] as const)
    solid(box(q * 0.096, a, q * (r - 0.004), b), looks.pads, "hair");
  const body = [
    place(q * 0.088, padIn),
    place(q * 0.088, padIn - 0.05),
    place(q * (r + 0.006), padIn - 0.05),
    place(q * (r + 0.024), padIn - 0.008),
    place(q * (r + 0.024), padOut + 0.004),
    place(q * (r - 0.004), padOut + 0.016),
    place(q * 0.1, padOut + 0.016),
    place(q * 0.1, padOut),
    place(q * (r + 0.005), padOut),
    place(q * (r + 0.005), padIn),
  ];
  solid(roundedPolygon(body, 0.009 * view.scale), looks.caliper);
  return marks;
}
