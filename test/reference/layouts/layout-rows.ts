import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { askDoor, type LayoutSheet, layoutSheet } from "#contract";
import { LayoutSweep, type TravelPosition, TravelSweep } from "#engines/linkage";
import { degreesFromRadians } from "#quantity";
import { readCorners } from "../../fuzz/reference-corners.ts";
import { couplerAngle, type FourBar } from "../geometry/planar-corner.ts";
import { absolute, type Row, relativeAboveOne, Score } from "../score.ts";
import { type ArmPose, followArm } from "./arm-continuation.ts";
import { scoreSameAxle } from "./axle-rows.ts";
import { layoutOfCorner } from "./layout-of-corner.ts";

const deg = degreesFromRadians;
const exact = absolute(1e-9);

/** The layout of docs/examples that no code knows. */
export function readExampleLayout(): LayoutSheet {
  const path = fileURLToPath(new URL("../../../docs/examples/layouts/rear-integral-link.json", import.meta.url));
  return layoutSheet.parse(JSON.parse(readFileSync(path, "utf8")));
}

interface LayoutPosition {
  readonly wheel_centre_mm: readonly [number, number, number];
  readonly camber_deg: number;
  readonly toe_deg: number;
  readonly closure_mm: number;
}

export function askLayout(layout: object, travels: readonly number[]): readonly LayoutPosition[] {
  const steps = travels.map((wheel_travel_mm) => ({ wheel_travel_mm }));
  const answer = askDoor("linkage.bodies", { layout, steps });
  if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
  return (answer.output as { readonly positions: readonly LayoutPosition[] }).positions;
}

/** Two bodies whose motion stays in the plane x = 0: arm = crank, knuckle = coupler, wheel centre on the crank pin. */
function fourBarLayout(bar: FourBar, crossed: boolean, designAt: number): object {
  const a = [500, 300] as const;
  const at = (designAt * Math.PI) / 180;
  const pin = [a[0] + bar.crank * Math.cos(at), a[1] + bar.crank * Math.sin(at)] as const;
  const turn = couplerAngle(bar, at, crossed);
  const end = [pin[0] + bar.coupler * Math.cos(turn), pin[1] + bar.coupler * Math.sin(turn)] as const;
  const place = (name: string, x: number, [y, z]: readonly [number, number]) => ({ name, at_mm: [x, y, z] });
  const bush = (name: string, point: string, slides: boolean) => ({
    name,
    kind: "bush",
    between: ["car-body", "arm"],
    at: point,
    axis: [1, 0, 0],
    slides,
  });
  const link = (name: string, on: string, from: string, to: string) => ({
    name,
    from: { on, at: from },
    to: { on: "knuckle", at: to },
  });
  return {
    name: "planar four-bar",
    bodies: ["knuckle", "arm"],
    points: [
      place("front", 80, a),
      place("rear", -80, a),
      place("pin", 0, pin),
      place("arm-side", 60, pin),
      // Across the crank, so that the integral link and the guide never hold the same thing.
      place("coupler-side", 90, [pin[0] - 120 * Math.sin(at), pin[1] + 120 * Math.cos(at)]),
      place("rocker-inner", 0, [a[0] + bar.ground, a[1]]),
      place("rocker-outer", 0, end),
      place("guide-inner", -100, a),
      place("guide-outer", -100, pin),
    ],
    wheel: { on: "knuckle", centre_mm: [0, ...pin], camber_deg: 0, toe_deg: 0, loaded_radius_mm: 300 },
    joints: [
      bush("front", "front", false),
      bush("rear", "rear", true),
      { name: "ball", kind: "ball", between: ["arm", "knuckle"], at: "pin" },
    ],
    links: [
      link("integral", "arm", "arm-side", "coupler-side"),
      link("rocker", "car-body", "rocker-inner", "rocker-outer"),
      link("guide", "car-body", "guide-inner", "guide-outer"),
    ],
  };
}

function scoreFourBar(): Score {
  const score = new Score("four-bar as two moving bodies (closed form)", "closed form");
  const bars: readonly (readonly [FourBar, boolean, number])[] = [
    [{ ground: 100, crank: 40, coupler: 120, rocker: 80 }, false, 40],
    [{ ground: 100, crank: 40, coupler: 120, rocker: 80 }, true, 40],
    [{ ground: 120, crank: 60, coupler: 80, rocker: 80 }, false, 45],
    [{ ground: 300, crank: 350, coupler: 280, rocker: 310 }, false, 60],
  ];
  for (const [bar, crossed, designAt] of bars) {
    const design = (designAt * Math.PI) / 180;
    const angles = [-20, -8, 5, 15].map((by) => design + (by * Math.PI) / 180);
    const height = (at: number): number => bar.crank * (Math.sin(at) - Math.sin(design));
    const positions = askLayout(fourBarLayout(bar, crossed, designAt), angles.map(height));
    angles.forEach((at, i) => {
      const coupler = couplerAngle(bar, design, crossed) - ((positions[i]?.camber_deg ?? Number.NaN) * Math.PI) / 180;
      score.compare("coupler angle, deg", deg(coupler), deg(couplerAngle(bar, at, crossed)), exact);
      const across = positions[i]?.wheel_centre_mm[1];
      score.compare("crank pin, mm", across, 500 + bar.crank * Math.cos(at), exact);
    });
  }
  return score;
}

function scoreContinuation(): Score {
  const score = new Score("carrier arm with integral link (second continuation)", "computed in the test");
  const sheet = readExampleLayout();
  const travels = [-90, -60, -30, -5, 10, 35, 60, 90];
  const positions = askLayout(sheet, travels);
  followArm(sheet, travels).forEach(({ centre, axis }: ArmPose, i) => {
    const got = positions[i];
    score.compareAll("wheel_centre_mm", got?.wheel_centre_mm, centre, exact);
    score.compare("camber_deg", got?.camber_deg, deg(Math.asin(-axis[2])), exact);
    score.compare("toe_deg", got?.toe_deg, deg(Math.atan2(axis[0], axis[1])), exact);
  });
  const range = Array.from({ length: 181 }, (_, i) => i - 90);
  for (const { closure_mm } of askLayout(sheet, range)) score.compare("closure_mm", closure_mm, 0, exact);
  return score;
}

/** Everything of a position that does not hang on how springs are given. */
function figuresOf(p: TravelPosition): readonly (readonly [string, readonly number[]])[] {
  const axis = p.steering?.heightHeld;
  const mm = (v: readonly number[]): number[] => v.map((x) => 1000 * x);
  return [
    ["wheel centre, contact, mm", mm([...p.attitude.centre, ...p.attitude.contact])],
    ["camber, toe, spin, deg", [p.attitude.camber, p.attitude.toe, p.attitude.spin].map(deg)],
    ["gains, deg/m", [p.camberGain, p.toeGain, p.spinGain].map(deg)],
    ["roll centre heights, mm", mm([p.rollCentreMigrating, p.rollCentreConstruction])],
    ["slopes under braking and drive", [p.brakeSlope, p.driveSlope]],
    ["instant centres, mm", mm([...(p.frontViewCentre ?? []), ...(p.sideViewCentre ?? [])])],
    [
      "steering axis: caster, inclination, deg; trail, scrub, mm",
      axis ? [deg(axis.caster), deg(axis.inclination), ...mm([axis.trail, axis.scrub])] : [],
    ],
  ];
}

function scoreSameLinkage(): Score {
  const score = new Score("arms as bodies against arms as pairs of links", "same linkage in two forms");
  for (const { geometry } of readCorners()) {
    const pairs = new TravelSweep(geometry);
    const bodies = new LayoutSweep(layoutOfCorner(geometry));
    const racks = geometry.links.some((l) => l.steered) ? [0, 0.02, -0.03] : [0];
    for (const travel of [-0.07, -0.03, 0, 0.025, 0.06])
      for (const rack of racks) {
        const [p, q] = [pairs.solve({ travel, rack }), bodies.solve({ travel, rack })];
        if ("foldAt" in p || "foldAt" in q) {
          score.agree("folds alike", "foldAt" in p && "foldAt" in q && Math.abs(p.foldAt - q.foldAt) < 1e-7);
          continue;
        }
        const wanted = figuresOf(p);
        figuresOf(q).forEach(([what, got], i) => {
          score.compareAll(what, got, wanted[i]?.[1] ?? [], relativeAboveOne(1e-9));
        });
      }
  }
  return score;
}

/** All rows of layouts given as bodies and joints. */
export function scoreLayouts(): readonly Row[] {
  return [scoreFourBar(), scoreContinuation(), scoreSameLinkage(), scoreSameAxle()].flatMap((s) => s.rows());
}
