import { describe, expect, it } from "vitest";
import { type CarMotion, computeCar, type Figure, type WholeCar } from "#casework";
import { askDoor, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { assembleCorner, type Family, familyFromSilhouette } from "#vehicle";

const demo = (id: string): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const ouzel = demo("ouzel-saloon");
const carOf = (motion: CarMotion, family = ouzel): WholeCar => {
  const answer = computeCar({ family, motion });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.car;
};
const figure = (car: WholeCar, key: string): Figure => {
  const found = car.figures.find((one) => one.key === key);
  if (!found) throw new Error(`no figure ${key}`);
  return found;
};
const ROLL = (2 * Math.PI) / 180;

describe("the whole car", { timeout: 60_000 }, () => {
  it("is the calculation linkage.car for the same points and motion", () => {
    const mm = (p: readonly number[]): number[] => p.map((x) => 1000 * x);
    const axle = (name: "front" | "rear") => {
      const a = assembleCorner(ouzel, `${name}-left`);
      return {
        links: a.links.map((l) => ({
          name: l.name,
          inner_mm: mm(l.inner.at),
          outer_mm: mm(l.outer.at),
          steered: l.steered,
        })),
        wheel: {
          centre_mm: mm(a.wheel.centre),
          camber_deg: (a.wheel.camber * 180) / Math.PI,
          toe_deg: (a.wheel.toe * 180) / Math.PI,
          loaded_radius_mm: 1000 * a.wheel.loadedRadius,
        },
      };
    };
    const about = [-1000 * (1 - ouzel.frontWeightShare) * ouzel.wheelbase, 0, 0];
    const answer = askDoor("linkage.car", {
      front: axle("front"),
      rear: axle("rear"),
      about_mm: about,
      motions: [{}, { roll_deg: 2 }],
    });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const { states } = answer.output as {
      readonly states: readonly Record<string, { toe_deg: number; camber_deg: number }>[];
    };
    const car = carOf({ kind: "roll", by: ROLL });
    for (const [key, wire] of [
      ["frontLeft", "front_left"],
      ["frontRight", "front_right"],
      ["rearLeft", "rear_left"],
      ["rearRight", "rear_right"],
    ] as const) {
      const [rest, there] = [states[0]?.[wire], states[1]?.[wire]];
      expect(figure(car, `${key}-toe`).value).toBeCloseTo((there?.toe_deg ?? Number.NaN) - (rest?.toe_deg ?? 0), 9);
      expect(figure(car, `${key}-camber`).value).toBeCloseTo(
        (there?.camber_deg ?? Number.NaN) - (rest?.camber_deg ?? 0),
        9,
      );
    }
  });

  it("leans to both sides alike: what the right wheel does, the left one does the other way round", () => {
    const [right, left] = [carOf({ kind: "roll", by: ROLL }), carOf({ kind: "roll", by: -ROLL })];
    for (const key of ["toe", "camber"])
      for (const axle of ["front", "rear"])
        expect(figure(right, `${axle}Right-${key}`).value).toBeCloseTo(figure(left, `${axle}Left-${key}`).value, 9);
    expect(right.sentence).toMatch(
      /^With the body leaning 2\.00° to the right, as in a bend to the left: the loaded front right wheel /,
    );
    expect(left.sentence).toMatch(/to the left, as in a bend to the right: the loaded front left wheel /);
  });

  it("says how far the outer wheel is from the exact condition, in closed form", () => {
    const car = carOf({ kind: "rack", by: 0.04 });
    const [inner, correct, outer] = ["inner", "correct", "outer"].map(
      (key) => (figure(car, key).value * Math.PI) / 180,
    ) as [number, number, number];
    const pivots = (1 / Math.tan(correct) - 1 / Math.tan(inner)) * ouzel.wheelbase;
    // The steering axes meet the ground inboard of the patches, by a little.
    expect(pivots).toBeGreaterThan(0.8 * ouzel.front.track);
    expect(pivots).toBeLessThan(1.1 * ouzel.front.track);
    expect(figure(car, "error").value).toBeCloseTo(((outer - correct) * 180) / Math.PI, 9);
    for (const key of ["inner", "outer", "error", "frontLeft-camber", "frontRight-camber"]) {
      const { band, value: own } = figure(car, key);
      expect(band?.[0], key).toBeLessThan(own);
      expect(band?.[1], key).toBeGreaterThan(own);
    }
    // Along the curve as at the figure, and to the other side the mirror image.
    const line = car.plots[0]?.lines[0];
    const at = line?.rises.findIndex((rack) => Math.abs(rack - 0.04) < 0.0035) ?? -1;
    expect(line?.low[at]).toBeLessThan(line?.values[at] ?? Number.NaN);
    const other = carOf({ kind: "rack", by: -0.04 });
    expect(figure(other, "frontRight-camber").value).toBeCloseTo(figure(car, "frontLeft-camber").value, 9);
    expect(figure(other, "frontRight-camber").band?.[0]).toBeCloseTo(
      figure(car, "frontLeft-camber").band?.[0] ?? Number.NaN,
      9,
    );
  });

  it("prints no toe whose sign is not sure, and no force of a bar that would twist too far, and says both", () => {
    const made = familyFromSilhouette({ frontLayout: "strut", rearLayout: "five-link" });
    if ("findings" in made) throw new Error("no family");
    const scaled = carOf({ kind: "roll", by: ROLL }, made.family);
    expect(scaled.sentence).toContain("which is not sure");
    expect(scaled.figures.some(({ signSure, settle }) => !signSure && settle !== null)).toBe(true);
    const own = carOf({ kind: "roll", by: ROLL });
    expect(own.figures.map(({ key }) => key)).toEqual(expect.arrayContaining(["front-force", "rear-force"]));
    expect(own.howSure).toMatch(/^Bands hold 95 %/);
    const { bar } = ouzel.rear;
    if (!bar) throw new Error("no bar");
    // A lever of 60 mm instead of 158 mm.
    const path = bar.path.map(([x, y, z]) => [Math.min(x, -2.976), y, z] as const);
    const short = carOf({ kind: "roll", by: ROLL }, { ...ouzel, rear: { ...ouzel.rear, bar: { ...bar, path } } });
    expect(short.howSure).toMatch(/^The rear bar would twist \d+°, further than a bar takes/);
    expect(short.figures.map(({ key }) => key)).toContain("front-force");
    expect(short.figures.map(({ key }) => key)).not.toContain("rear-force");
  });

  describe("in a bend", () => {
    const G = 9.80665;
    const bend = (by: number, along = 0): CarMotion => ({ kind: "bend", by: by * G, along: along * G });
    const value = (car: WholeCar, key: string): number => figure(car, key).value;

    it("has the same bands to a thousandth whatever was asked before it", () => {
      const spreads = (car: WholeCar) => car.figures.map(({ key, u }) => [key, u] as const);
      const alone = spreads(carOf(bend(0.45, -0.25), { ...ouzel, id: "asked-alone" }));
      const after = { ...ouzel, id: "asked-after-others" };
      for (const [by, along] of [
        [0.1, 0.1],
        [-0.4, -0.5],
        [0.6, 0],
      ] as const)
        carOf(bend(by, along), after);
      const again = new Map(spreads(carOf(bend(0.45, -0.25), after)));
      expect(alone.filter(([, u]) => u > 0).length).toBeGreaterThan(6);
      for (const [key, u] of alone)
        expect(Math.abs((again.get(key) ?? Number.NaN) - u), key).toBeLessThanOrEqual(u / 1000);
    });

    it("moves what its mass at its height tips, and says so in one sentence", () => {
      const car = carOf(bend(0.5));
      // Tipping moment: all that moves, by the tracks, is the mass at its height and what leans over the patches.
      const { cgHeight, kerbMass, front, rear } = ouzel;
      const tipping = kerbMass * 0.5 * G * cgHeight;
      const held = value(car, "bend-front-moved") * front.track + value(car, "bend-rear-moved") * rear.track;
      expect(held / tipping).toBeGreaterThan(1);
      expect(held / tipping).toBeLessThan(1 + (2 * ((value(car, "bend-lean") * Math.PI) / 180)) / 0.5);
      expect(car.sentence).toMatch(/^In a steady bend to the left at 0\.50 g the body leans \d\.\d°; /);
      expect(car.sentence).toContain(`${10 * Math.round(value(car, "bend-front-moved") / 10)} N`);
      const loads = ["frontLeft", "frontRight", "rearLeft", "rearRight"].map((p) => value(car, `${p}-load`));
      expect(loads.reduce((a, b) => a + b)).toBeCloseTo(kerbMass * G, 6);
    });

    it("has bands that a heavier, higher or softer car lies in the middle of, the same each time", () => {
      const [one, again] = [carOf(bend(0.5)), carOf(bend(0.5))];
      for (const key of ["bend-lean", "bend-front-moved", "frontRight-load"]) {
        const { value: lean, band, u } = figure(one, key);
        const [low, high] = band ?? [0, 0];
        // Sought from where each drawn car stood last: the same but for rounding.
        expect(figure(again, key).band?.[0]).toBeCloseTo(low, 8);
        expect(low).toBeLessThan(lean);
        expect(high).toBeGreaterThan(lean);
        // Neither certain nor without meaning: the entered mass alone scatters by three in a hundred.
        expect(u / lean).toBeGreaterThan(0.02);
        expect(u / lean).toBeLessThan(0.3);
      }
      // A template says less than a measured car.
      const made = familyFromSilhouette({ frontLayout: "strut", rearLayout: "five-link" });
      if ("findings" in made) throw new Error("no family");
      const share = (car: WholeCar): number => figure(car, "bend-lean").u / value(car, "bend-lean");
      expect(share(carOf(bend(0.5), made.family))).toBeGreaterThan(1.5 * share(one));
    });

    it("braked, moves its load forward by height over wheelbase and goes down in front", () => {
      const car = carOf(bend(0, -0.5));
      const { cgHeight, kerbMass, wheelbase } = ouzel;
      expect(value(car, "bend-along-moved") / ((kerbMass * 0.5 * G * cgHeight) / wheelbase)).toBeCloseTo(1, 1);
      expect(figure(car, "bend-front-sinks").label).toBe("Front of the body goes down on its springs");
      expect(value(car, "bend-front-sinks")).toBeGreaterThan(1);
      expect(car.sentence).toMatch(/^Braking with 0\.50 g, \d+ N go to the front axle/);
      const both = carOf(bend(-0.4, -0.3));
      expect(both.sentence).toMatch(/^Braking with 0\.30 g in a steady bend to the right at 0\.40 g, the body leans/);
      expect(value(both, "frontLeft-load")).toBeGreaterThan(value(both, "frontRight-load"));
    });

    it("says what the arms take of the nod by the definition of the corner's own calculation, with a band", () => {
      const { wheelbase, cgHeight } = ouzel;
      for (const [along, axles] of [
        [-0.4, { front: "anti-braked-front", rear: "anti-braked-rear" }],
        [0.3, { front: "anti-driven-front", rear: "anti-driven-rear" }],
      ] as const) {
        const car = carOf(bend(0, along));
        for (const axle of ["front", "rear"] as const) {
          const share = along < 0 ? ouzel[axle].brakeShare : ouzel[axle].driveShare;
          const found = car.figures.find(({ key }) => key === axles[axle]);
          expect(found === undefined, axles[axle]).toBe(share === 0);
          if (found === undefined) continue;
          const a = assembleCorner(ouzel, `${axle}-left`);
          const answer = askDoor("linkage.travel", {
            side: "left",
            links: a.links.map((l) => ({
              name: l.name,
              inner_mm: l.inner.at.map((x) => 1000 * x),
              outer_mm: l.outer.at.map((x) => 1000 * x),
              steered: l.steered,
            })),
            wheel: {
              centre_mm: a.wheel.centre.map((x) => 1000 * x),
              camber_deg: (a.wheel.camber * 180) / Math.PI,
              toe_deg: (a.wheel.toe * 180) / Math.PI,
              loaded_radius_mm: 1000 * a.wheel.loadedRadius,
            },
            car: {
              axle,
              wheelbase_mm: 1000 * wheelbase,
              cg_height_mm: 1000 * cgHeight,
              brake_share: ouzel[axle].brakeShare,
              drive_share: ouzel[axle].driveShare,
            },
            steps: [{ wheel_travel_mm: 0 }],
          });
          if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
          const [at] = (answer.output as { readonly positions: readonly Record<string, number>[] }).positions;
          expect(found.value).toBeCloseTo(
            at?.[along < 0 ? "anti_dive_percent" : "anti_squat_percent"] ?? Number.NaN,
            6,
          );
          expect(found.band?.[0]).toBeLessThan(found.value);
          expect(found.band?.[1]).toBeGreaterThan(found.value);
        }
      }
      expect(carOf({ kind: "pitch", by: 0.01 }).figures.map(({ key }) => key)).toContain("anti-braked-front");
    });

    it("has a table of four wheels, each cell a figure that opens, loads as the sum of the car", () => {
      const { corners, figures } = carOf(bend(0.5, -0.2));
      expect(corners.map(({ label }) => label)).toEqual([
        "load",
        "travel against the body, bump",
        "camber against the ground, from standing",
        "toe by the linkage, from standing",
        "toe by the joints' give",
      ]);
      for (const { cells } of corners)
        for (const cell of Object.values(cells)) expect(cell !== null && figures.includes(cell)).toBe(true);
      const heave = carOf({ kind: "heave", by: -0.03 }).corners;
      expect(heave.map(({ cells }) => cells.frontLeft === cells.frontRight)).toEqual([true, true, true]);
    });

    it("says what a torn bush does to its own wheel under the forces that wheel has", () => {
      const changed = { position: "rear-right/trailing-link/inner-bush", fault: { kind: "torn", grade: 3 } } as const;
      const answer = computeCar({ family: ouzel, motion: bend(0.3, -0.3), changed });
      if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
      const further = figure(answer.car, "bend-changed-toe");
      expect(further.label).toBe("Toe the rear right wheel turns further, torn");
      expect(further.band?.[0]).toBeLessThan(further.value);
      expect(answer.car.sentence).toMatch(/torn the rear right wheel turns a further \d\.\d\d° (?:in|out)/);
      // Mirrored bend, mirrored place: the same.
      const other = computeCar({
        family: ouzel,
        motion: bend(-0.3, -0.3),
        changed: { ...changed, position: "rear-left/trailing-link/inner-bush" },
      });
      if ("findings" in other) throw new Error(JSON.stringify(other.findings));
      expect(figure(other.car, "bend-changed-toe").value).toBeCloseTo(further.value, 6);
      const stranger = computeCar({
        family: ouzel,
        motion: bend(0.3),
        changed: { ...changed, position: "rear-right/nothing" },
      });
      expect("findings" in stranger && stranger.findings).toMatchObject([{ code: "unknown-position" }]);
    });

    it("says what a loose or firmer joint does there, as the sheet of that fault has it, with a band", () => {
      const position = "rear-right/trailing-link/inner-bush";
      for (const [fault, words] of [
        [{ kind: "loose", play: 0.001, assumed: true }, "loose, 1.0 mm assumed"],
        [{ kind: "firmer", factor: 2 }, "firmer, 2 times"],
        [{ kind: "firmer", hardness: { from: 55, to: 65 } }, "firmer, 55 to 65 Shore A"],
      ] as const) {
        const answer = computeCar({ family: ouzel, motion: bend(0.3, -0.3), changed: { position, fault } });
        if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
        const further = figure(answer.car, "bend-changed-toe");
        expect(further.label).toBe(`Toe the rear right wheel turns further, ${words}`);
        expect(further.band?.[0]).toBeLessThan(further.value);
        expect(further.band?.[1]).toBeGreaterThan(further.value);
        expect(answer.car.sentence).toContain(`(${words}) the rear right wheel turns `);
      }
      // No hardness to start from: nothing is made up, and the bend itself is still told.
      const unknown = computeCar({
        family: ouzel,
        motion: bend(0.3),
        changed: { position, fault: { kind: "firmer", hardness: { from: null, to: null } } },
      });
      if ("findings" in unknown) throw new Error(JSON.stringify(unknown.findings));
      expect(unknown.car.sentence).toContain("nothing is computed");
      expect(unknown.car.figures.map(({ key }) => key)).not.toContain("bend-changed-toe");
    });

    it("has a band along every curve, the one of the figures where they meet", () => {
      const car = carOf(bend(0.4, -0.2));
      const lean = car.plots.find((plot) => plot.figure === "lean")?.lines[0];
      const own = figure(car, "bend-lean");
      const at = lean?.rises.findIndex((by) => Math.abs(by - 0.4 * G) < 1e-9) ?? -1;
      expect(lean?.values[at]).toBeCloseTo(own.value, 8);
      expect(lean?.low[at]).toBeCloseTo(own.band?.[0] ?? Number.NaN, 5);
      expect(lean?.high[at]).toBeCloseTo(own.band?.[1] ?? Number.NaN, 5);
      // To the other side it is its own mirror image.
      expect(lean?.low[0]).toBeCloseTo(-(lean?.high.at(-1) ?? Number.NaN), 9);
      const load = car.plots.find((plot) => plot.figure === "load");
      for (const { low, high } of load?.lines ?? [])
        expect(low.every((one, i) => one < (high[i] ?? Number.NaN))).toBe(true);
    });

    it("says which wheel lifts and at how much, and ends its curves there", () => {
      // Narrow, high and stiff in front.
      const tall: Family = { ...ouzel, cgHeight: 1.15 };
      const answer = computeCar({ family: tall, motion: bend(0.8) });
      if (!("findings" in answer)) throw new Error("stands");
      const [finding] = answer.findings;
      expect(finding?.got).toMatch(/: the (?:front|rear) left wheel lifts$/);
      const most = Number(/^It takes (\d\.\d\d) g/.exec(finding?.hint ?? "")?.[1]);
      expect("car" in computeCar({ family: tall, motion: bend(most - 0.01) })).toBe(true);
      expect("car" in computeCar({ family: tall, motion: bend(most + 0.02) })).toBe(false);
      const plot = carOf(bend(0.2), tall).plots[0];
      expect(plot?.leftOut[0]).toBe(
        `bends to the left end at ${most.toFixed(2)} g: the ${/the (\w+ left)/.exec(finding?.got ?? "")?.[1]} wheel lifts`,
      );
      expect((plot?.lines[0]?.rises.at(-1) ?? 0) / G).toBeCloseTo(most, 2);
    });

    it("says when both together are more than tyres pass on", () => {
      expect(carOf(bend(0.8, -0.8)).sentence).toContain("Together that is 1.13 g, more than road tyres pass on");
      expect(carOf(bend(0.6, -0.6)).sentence).not.toContain("Together");
    });

    it("standing still moves nothing, and beyond what is asked for is refused", () => {
      const still = carOf(bend(0));
      expect(still.sentence).toMatch(/^The car stands still/);
      expect(still.figures.map(({ key }) => key)).not.toContain("bend-lean");
      for (const motion of [bend(1.2), bend(0.2, -0.9)]) {
        const answer = computeCar({ family: ouzel, motion });
        expect("findings" in answer && answer.findings[0]?.code).toBe("out-of-range");
      }
    });
  });

  it("is refused beyond what is followed", () => {
    const answer = computeCar({ family: ouzel, motion: { kind: "heave", by: 0.3 } });
    expect("findings" in answer && answer.findings).toMatchObject([{ code: "out-of-range", path: "motion.by" }]);
  });
});
