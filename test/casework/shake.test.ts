import { describe, expect, it } from "vitest";
import { computeShake, formatFigure, rememberShake, type Shake } from "#casework";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { ComplianceSolver, computeForeAftShare } from "#engines/linkage";
import { metresFromMm, metresPerSecondFromKmPerHour } from "#quantity";
import { type Corner, type Family, familyFromSilhouette, type Joint } from "#vehicle";
import { modelCorner } from "../../src/casework/fault/corner-model.ts";
import { angularAt, computeGive, makeShakeModel } from "../../src/casework/shake/shake-model.ts";
import { shakeWheelOf } from "../../src/casework/shake/shake-wheel.ts";

const readFamily = (id: string): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};

const coupe = readFamily("siskin-coupe");
const saloon = readFamily("ouzel-saloon");
const tensionLink = "tension-link/inner-bush";

const shakeOf = (family: Family, corner: Corner, place: string): Shake => {
  const answer = computeShake(family, { corner, position: `${corner}/${place}` });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.shake;
};
const placesOf = (family: Family, corner: Corner, position: string): readonly string[] => {
  const answer = computeShake(family, { corner, position });
  return "findings" in answer ? answer.findings.map(({ code, path }) => `${code} ${path}`) : [];
};

/** A family whose front tension link has another inner joint. */
const withJoint = (change: (joint: Joint) => Joint): Family => ({
  ...coupe,
  front: {
    ...coupe.front,
    links: coupe.front.links.map((link) =>
      link.name === "tension-link" ? { ...link, innerJoint: change(link.innerJoint) } : link,
    ),
  },
});

const shareOf = (family: Family) => {
  const { geometry, elasticity } = modelCorner(family, "front-left");
  const solver = new ComplianceSolver({ geometry, elasticity, hold: "contact-height", faults: [] });
  const share = computeForeAftShare(solver, "tension-link");
  if (share === null) throw new Error("no share");
  return { share, rates: solver.solveLoadRates() };
};

describe("the share of one link in how far the wheel gives along the road", () => {
  it("is that of the tangents of the balance", () => {
    const { share, rates } = shareOf(coupe);
    expect(share.centreByBraking / -(rates?.braking.centre[0] ?? 0)).toBeCloseTo(1, 10);
    expect(share.centreByOwn / (rates?.drive.centre[0] ?? 0)).toBeCloseTo(1, 10);
  });

  it("is the same either way: what a pull moves at the wheel is what a push there lengthens", () => {
    const { share } = shareOf(coupe);
    expect(share.centreByPull / share.stretchByOwn).toBeCloseTo(1, 9);
  });

  it("tells exactly what any other rate of the link does, as balancing that corner anew does", () => {
    const { share } = shareOf(coupe);
    for (const factor of [0.1, 0.5, 3, 50]) {
      const other = shareOf(
        withJoint((joint) => ({ ...joint, radial: (joint.radial ?? 0) * factor, axial: (joint.axial ?? 0) * factor })),
      ).share;
      const d = other.linkRate - share.linkRate;
      const told = (straight: number, stretch: number): number =>
        straight - (d * share.centreByPull * stretch) / (1 + d * share.stretchByPull);
      expect(told(share.centreByOwn, share.stretchByOwn) / other.centreByOwn).toBeCloseTo(1, 9);
      expect(told(share.centreByBraking, share.stretchByBraking) / other.centreByBraking).toBeCloseTo(1, 9);
    }
  });
});

describe("a wheel on a hydraulic bush", () => {
  const { assembly } = modelCorner(coupe, "front-left");
  const model = makeShakeModel(assembly, "tension-link", shakeWheelOf(coupe.front));
  if (model === null) throw new Error("no model");

  it("pushed slowly gives as the balance says, with the fluid and without: a lever does not find the leak", () => {
    const still = { ...model, bush: { ...model.bush, lossFactor: 0 } };
    const { share } = shareOf(coupe);
    for (const state of ["sound", "leaked"] as const)
      expect(computeGive(still, state, 0) / share.centreByBraking).toBeCloseTo(1, 12);
  });

  it("with the whole corner in the bush is the wheel of the rubber door: 1/|K - M w²|", () => {
    const one = 1 / model.bush.rubber;
    const bare = {
      ...model,
      rest: 0,
      across: 1,
      foreAft: {
        linkRate: model.bush.rubber,
        centreByBraking: one,
        centreByOwn: one,
        centreByPull: one,
        stretchByBraking: one,
        stretchByOwn: one,
        stretchByPull: one,
      },
    };
    const w = 2 * Math.PI * 14;
    const leaked = 1 / Math.hypot(model.bush.rubber - model.mass * w * w, model.bush.rubber * model.bush.lossFactor);
    expect(computeGive(bare, "leaked", w) / leaked).toBeCloseTo(1, 12);
  });

  it("turns once per circumference", () => {
    const turns = angularAt(model, metresPerSecondFromKmPerHour(90)) / (2 * Math.PI);
    expect(turns * model.circumference).toBeCloseTo(25, 12);
  });
});

describe("what a leaked bush does", () => {
  const shake = shakeOf(coupe, "front-left", tensionLink);

  it("shakes more in a band of speeds, less above it, and its lines lie inside their bands", () => {
    const [sound, leaked] = shake.lines;
    const worst = shake.speeds.indexOf(shake.worst.speed);
    expect(shake.worst.atEnd).toBe(false);
    expect(leaked.values[worst]).toBe(Math.max(...leaked.values));
    expect(leaked.values[worst] ?? 0).toBeGreaterThan(2 * (sound.values[worst] ?? 0));
    expect(leaked.values.at(-1) ?? 0).toBeLessThan(sound.values.at(-1) ?? 0);
    for (const { values, low, high } of shake.lines)
      values.forEach((value, i) => {
        expect(low[i] ?? 0).toBeLessThan(value);
        expect(low[i] ?? 0).toBeGreaterThan(0);
        expect(high[i] ?? 0).toBeGreaterThan(0.98 * value);
      });
  });

  it("says its headline in its sentence and that standing still tells nothing", () => {
    expect(shake.headline.signSure).toBe(true);
    expect(shake.headline.band?.[0]).toBeGreaterThan(1);
    expect(shake.sentence).toContain(formatFigure(shake.headline));
    expect(shake.sentence).toContain("standing still nothing tells the two apart");
    expect(shake.figures.find(({ key }) => key === "static")?.value).toBe(1);
  });

  it("reads alike on a shaker that is slow, and not at all alike where it shakes most", () => {
    const { frequencies, lines, worst } = shake.bush;
    const [sound, leaked] = lines;
    const at = frequencies.indexOf(Math.round(worst));
    expect((sound?.stiffness.values[0] ?? 0) / (leaked?.stiffness.values[0] ?? 1)).toBeCloseTo(1, 1);
    expect(sound?.lossAngle.values[at] ?? 0).toBeGreaterThan(2 * (leaked?.lossAngle.values[at] ?? 0));
    for (const line of lines)
      for (const { values, low, high } of [line.stiffness, line.lossAngle])
        values.forEach((value, i) => {
          expect(low[i] ?? 0).toBeLessThan(value);
          expect(high[i] ?? 0).toBeGreaterThan(value);
        });
    expect(shake.bushAlone).toContain("the loss angle is what damps");
  });

  it("is the same on the right, and the same each time", () => {
    const right = shakeOf(coupe, "front-right", tensionLink);
    expect(right.figures.map(({ value, band }) => [value, band])).toEqual(
      shake.figures.map(({ value, band }) => [value, band]),
    );
    expect(right.sentence).toBe(shake.sentence.replace("front left", "front right"));
  });

  it("holds for a leg of a rigid arm too", () => {
    const arm = shakeOf(saloon, "front-left", "lower-arm/rear-bush");
    expect(arm.headline.value).toBeGreaterThan(1);
    expect(arm.rung).toBe("measured");
  });

  /** A bush so soft that the wheel meets its resonance below the speeds looked at, with much fluid in it. */
  const softer = (share: number): Shake =>
    shakeOf(
      withJoint((joint) => ({
        ...joint,
        radial: (joint.radial ?? 0) * share,
        ...(joint.fluid && { fluid: { ...joint.fluid, volume: joint.fluid.volume * 2 * share, inertia: 200 } }),
      })),
      "front-left",
      tensionLink,
    );

  it("is not printed as more or less where the data leave that open", () => {
    const open = softer(0.04);
    expect(open.headline.signSure).toBe(false);
    expect(open.headline.settle).toContain("would settle it");
    expect(open.sentence).toContain("is not sure");
    expect(open.sentence).not.toMatch(/\d/);
  });

  it("can also be less, and says so", () => {
    const less = softer(0.02);
    expect(less.headline.signSure).toBe(true);
    expect(less.headline.band?.[1]).toBeLessThan(1);
    expect(less.sentence).toContain("so less");
    expect(less.worst.atEnd).toBe(true);
  });
});

describe("the speed at which a driver feels it", () => {
  const ask = { corner: "front-left", position: `front-left/${tensionLink}` } as const;
  const at = (kmh: number, compute = computeShake): Shake => {
    const answer = compute(coupe, { ...ask, speed: metresPerSecondFromKmPerHour(kmh) });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    return answer.shake;
  };

  it("is told by the two lines there, with a band, as a figure and in the sentence", () => {
    const shake = at(110);
    const index = shake.speeds.indexOf(shake.felt ?? Number.NaN);
    const [sound, leaked] = shake.lines;
    const figure = shake.figures.find(({ key }) => key === "shake-felt");
    expect(figure?.value).toBeCloseTo((leaked.values[index] ?? 0) / (sound.values[index] ?? 1), 12);
    expect(figure?.band?.[0]).toBeLessThan(figure?.value ?? 0);
    expect(figure?.band?.[1]).toBeGreaterThan(figure?.value ?? 0);
    expect(shake.sentence).toContain(`At 110 km/h, where it is felt, it is ${figure && formatFigure(figure)} as far`);
  });

  it("is not called more or less where the data leave it open", () => {
    const shake = at(170);
    expect(shake.figures.find(({ key }) => key === "shake-felt")?.signSure).toBe(false);
    expect(shake.sentence).toContain(
      "At 170 km/h, where it is felt, whether it is more than on a sound bush is not sure.",
    );
  });

  it("changes nothing else, nor does a remembered bush; a disc twice as uneven shakes twice as far", () => {
    const remembering = rememberShake();
    const plain = shakeOf(coupe, "front-left", tensionLink);
    const told = at(110, remembering);
    expect(told.lines).toEqual(plain.lines);
    expect(at(110, remembering)).toEqual(at(110));
    const usual = plain.figures.find(({ key }) => key === "shake-leaked");
    const twice = remembering(coupe, { ...ask, variation: metresFromMm(0.03) });
    const leaked = "shake" in twice ? twice.shake.figures.find(({ key }) => key === "shake-leaked") : undefined;
    expect((leaked?.value ?? 0) / (usual?.value ?? 1)).toBeCloseTo(2, 12);
    expect((leaked?.band?.[1] ?? 0) / (usual?.band?.[1] ?? 1)).toBeCloseTo(2, 12);
  });

  it.each([
    ["slower than the curves", { speed: metresPerSecondFromKmPerHour(20) }, "out-of-range speed"],
    ["faster than the curves", { speed: metresPerSecondFromKmPerHour(260) }, "out-of-range speed"],
    ["a disc without variation", { variation: metresFromMm(0) }, "out-of-range variation"],
    ["a disc that no longer brakes", { variation: metresFromMm(1) }, "out-of-range variation"],
  ])("%s is refused", (_, more, finding) => {
    const answer = computeShake(coupe, { ...ask, ...more });
    expect("findings" in answer ? answer.findings.map(({ code, path }) => `${code} ${path}`) : []).toEqual([finding]);
  });
});

describe("a question about fluid that cannot be answered", () => {
  it.each([
    ["no such place", "front-left", "front-left/none", "unknown-position position"],
    ["another corner", "front-right", `front-left/${tensionLink}`, "not-consistent corner"],
    ["a plain bush", "rear-left", "rear-left/trailing-link/inner-bush", "no-fluid-here position"],
    ["a ball joint", "front-left", "front-left/tension-link/outer-joint", "no-fluid-here position"],
  ] as const)("%s", (_, corner, position, finding) => {
    expect(placesOf(coupe, corner, position)).toEqual([finding]);
  });

  it("a hydraulic bush whose fluid nobody has on file: no figure of another car stands in", () => {
    const made = familyFromSilhouette({ frontLayout: "double-wishbone", rearLayout: "five-link" });
    if ("findings" in made) throw new Error(JSON.stringify(made.findings));
    const position = "front-left/lower-arm/rear-bush";
    expect(placesOf(made.family, "front-left", position)).toEqual(["no-fluid-on-file position"]);
  });
});
