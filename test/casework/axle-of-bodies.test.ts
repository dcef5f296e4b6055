import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  computeCar,
  computeFaultEffect,
  computeHandTest,
  computeHold,
  computeMatch,
  computeShake,
  computeTravelSheet,
  type FaultEffect,
  type FaultQuestion,
  rankCoordinates,
} from "#casework";
import { checkFamily, formatFamily, parseFamily, parseFamilyText } from "#contract";
import type { Finding } from "#numeric";
import { type Corner, type Family, positionsOf, workOf } from "#vehicle";
import { moveCorner } from "../../src/drawing/geometry/moved-corner.ts";
import type { CarPoint } from "../../src/drawing/projection.ts";
import { editSheet } from "../family-sheets/edit-sheet.ts";
import { rearAxleInTwoForms } from "../family-sheets/rear-axle-in-two-forms.ts";

const exampleText = readFileSync(new URL("../../docs/examples/families/whinchat-tourer.json", import.meta.url), "utf8");
type Answer = object | { readonly findings: readonly Finding[] };
const BRAKING = { contactRise: 0.01, rack: 0, braking: 2000, lateral: 0, drive: 0 };

function read(parsed: ReturnType<typeof parseFamily>): Family {
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings, null, 1));
  return parsed.family;
}

function effectOf(family: Family, question: FaultQuestion): FaultEffect {
  const answer = computeFaultEffect(family, question);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings, null, 1));
  return answer.effect;
}

describe("an axle of several bodies", () => {
  const family = read(parseFamilyText(exampleText));
  const joints = positionsOf(family).filter(({ axle, side, joint }) => axle === "rear" && side === "left" && joint);

  it("reads, and is written again as it stood", () => {
    expect(read(parseFamily(JSON.parse(JSON.stringify(formatFamily(family)))))).toEqual(family);
    const given = (JSON.parse(exampleText) as { rear: unknown }).rear;
    expect(JSON.parse(JSON.stringify(formatFamily(family).rear.bodies))).toEqual((given as { bodies: unknown }).bodies);
  });

  it("has a place for every joint and every end of a link", () => {
    expect(joints.map(({ id }) => id).sort()).toEqual([
      "rear-left/camber-link/inner-bush",
      "rear-left/camber-link/outer-joint",
      "rear-left/carrier-arm/arm-ball",
      "rear-left/carrier-arm/arm-front",
      "rear-left/carrier-arm/arm-rear",
      "rear-left/integral-link/inner-bush",
      "rear-left/integral-link/outer-bush",
      "rear-left/toe-link/inner-bush",
      "rear-left/toe-link/outer-joint",
    ]);
  });

  it("has work of its own for every member, whose remedies cure its places", () => {
    const cures = workOf(family).remedies.flatMap((remedy) => (remedy.axle === "front" ? [] : remedy.cures));
    for (const { item, detail } of joints) expect(cures).toContain(`${item}/${detail}`);
  });

  it("is drawn from below and moved with each of its bodies", () => {
    const pose = effectOf(family, {
      corner: "rear-left",
      position: "rear-left/carrier-arm/arm-front",
      fault: { kind: "torn", grade: 3 },
      condition: { ...BRAKING, contactRise: 0.05 },
    }).sound;
    const moved = moveCorner(family.rear, "left", pose, 0);
    const member = (name: string) => moved.links.find((link) => link.name === name);
    const [arm, integral] = [member("carrier-arm-arm-front"), member("integral-link")];
    const lengthOf = (ends: { readonly inner: CarPoint; readonly outer: CarPoint } | undefined): number =>
      Math.hypot(...[0, 1, 2].map((i) => (ends?.outer[i] ?? 0) - (ends?.inner[i] ?? 0)));
    const still = (name: string): number => {
      const own = family.rear.links.find((link) => link.name === name);
      return lengthOf(own && { inner: own.inner.at, outer: own.outer.at });
    };
    expect(lengthOf(arm)).toBeCloseTo(still("carrier-arm-arm-front"), 12);
    // Between two moving bodies, and it keeps its length to what its rubber gives.
    expect(Math.abs(lengthOf(integral) - still("integral-link"))).toBeLessThan(0.002);
    expect((integral?.inner[2] ?? 0) - 0.2).toBeGreaterThan(0.03);
  });

  it("says what a torn bush does with its band, and the mirror image on the right", () => {
    const asked = (corner: Corner) =>
      effectOf(family, {
        corner,
        position: `${corner}/carrier-arm/arm-front`,
        fault: { kind: "torn", grade: 3 },
        condition: BRAKING,
      });
    const [left, right] = [asked("rear-left"), asked("rear-right")];
    const { headline } = left;
    expect(headline.signSure).toBe(true);
    const [low, high] = headline.band ?? [0, 0];
    expect(low).toBeLessThan(headline.value);
    expect(high).toBeGreaterThan(headline.value);
    expect(left.sentence).toMatch(
      /^Under 2.0 kN of braking at this wheel the torn bush lets the rear left wheel turn out/,
    );
    expect(left.computedSo).toMatch(/^Lower carrier arm with integral link, rear: 2 moving bodies with rubber/);
    expect(left.narrows).toContain("the front bush of the arm");
    expect(left.parts.map(({ label }) => label)).toContain("Integral link, end on the carrier arm");
    expect(right.headline.value).toBeCloseTo(left.headline.value, 12);
    expect(right.faulty.centre[1]).toBeCloseTo(-left.faulty.centre[1], 12);
  });
});

describe("what else an axle of several bodies is asked", () => {
  const family = read(parseFamilyText(exampleText));
  const sheet = JSON.parse(exampleText) as unknown;

  it("walks over travel, sound and with every rubber firmer, but for a figure without a band", () => {
    const answer = computeTravelSheet({
      family,
      corner: "rear-left",
      condition: { ...BRAKING, contactRise: 0.02 },
      subjects: [
        { kind: "sound" },
        { kind: "lowered", by: 0.02 },
        { kind: "every-rubber", fault: { kind: "firmer", factor: 1.5 } },
        { kind: "rubber", position: "rear-left/toe-link/inner-bush", fault: { kind: "torn", grade: 3 } },
      ],
      figures: ["toe", "track", "roll-centre", "spring-ratio"],
    });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const [toe, track, centre, spring] = answer.sheet.plots;
    expect(toe?.lines.map(({ subject }) => subject)).toEqual(["sound", "lowered", "every-rubber", "rubber"]);
    expect(track?.lines.length).toBe(2);
    expect(spring?.lines[0]?.values.every((ratio) => ratio > 0.3 && ratio < 1.2)).toBe(true);
    expect(centre?.lines).toEqual([]);
    expect(centre?.leftOut[0]).toContain("no band of it is computed for a layout of several bodies");
    const [sound] = answer.sheet.poses;
    expect(Object.keys(sound?.bodies ?? {})).toEqual(["knuckle", "carrier-arm"]);
    expect(answer.sheet.rows[0]?.binds).toMatch(/ride height|lock/);
  });

  it("is refused in words where nothing is computed for it", () => {
    const position = "rear-left/toe-link/inner-bush";
    const u = { travel: 0.001, camber: 0.001, toe: 0.001, length: 0.001, heightBase: 0, bodyBase: 0 };
    const answers: Answer[] = [
      computeHold(family, "rear-left"),
      computeHandTest(family, {
        corner: "rear-left",
        held: { kind: "hanging" },
        position,
        fault: { kind: "torn", grade: 3 },
        way: { kind: "rock", at: "3-9", moment: 150 },
      }),
      computeMatch({ family, corner: "rear-left", readings: [], lengths: [], u }),
      computeCar({ family, motion: { kind: "roll", by: 0.01 } }),
      computeShake(family, { corner: "rear-left", position }),
    ];
    for (const answer of answers) {
      const [finding] = "findings" in answer ? answer.findings : [];
      expect(finding?.code).toBe("not-for-bodies");
      expect(finding?.hint).toContain("Not for a layout of several bodies yet");
    }
    expect(rankCoordinates(family, "rear")).toEqual([]);
    expect(rankCoordinates(family, "front").length).toBeGreaterThan(0);
    expect("findings" in computeHold(family, "front-left")).toBe(false);
  });

  it.each([
    ["part-missing-in-layout", "rear.bodies", [{ remove: "rear.bodies" }]],
    ["part-not-in-layout", "rear.links", [{ set: "rear.links", to: [] }]],
    ["part-not-in-layout", "rear.bodies", [{ set: "rear.layout", to: "five-link" }]],
    ["part-not-in-layout", "front.bodies", [{ set: "front.bodies", copyOf: "rear.bodies" }]],
    ["no-template", "rear.rung", [{ set: "rear.rung", to: "scaled" }]],
    [
      "bodies-against-axle",
      "rear.bodies.layout.wheel.centre_mm[0]",
      [{ set: "rear.bodies.layout.wheel.centre_mm", to: [-2670, 760, 315] }],
    ],
    ["bodies-against-axle", "rear.bodies.wheel_load_n", [{ set: "rear.bodies.wheel_load_n", to: 4200 }]],
    ["bodies-against-axle", "rear.bodies.unsprung_kg", [{ set: "rear.bodies.unsprung_kg", to: 48 }]],
    [
      "bodies-name",
      "rear.bodies.layout.links[0].name",
      [{ set: "rear.bodies.layout.links[0].name", to: "Integral link" }],
    ],
    [
      "unknown-name",
      "rear.bodies.known_points[0].point",
      [{ set: "rear.bodies.known_points[0].point", to: "spring-top" }],
    ],
    ["unknown-name", "rear.bodies.rubber[0].part", [{ set: "rear.bodies.rubber[0].part", to: "arm-middle" }]],
    [
      "constraint-too-few",
      "rear.bodies.layout.joints",
      [{ remove: "rear.bodies.layout.links[2]" }, { remove: "rear.bodies.rubber[5]" }],
    ],
    ["unknown-key", "rear.bodies.colour", [{ set: "rear.bodies.colour", to: "red" }]],
    ["stop-beyond-fold", "rear.droop_stop_mm", [{ set: "rear.droop_stop_mm", to: 390 }]],
  ] as const)("says %s at %s", (code, path, edits) => {
    const findings = checkFamily(editSheet(sheet, edits));
    expect(findings.map((one) => `${one.code} ${one.path}`)).toContain(`${code} ${path}`);
    expect(findings.every(({ path }) => !path.includes("none"))).toBe(true);
  });
});

describe("a corner with one knuckle written as bodies", () => {
  const { own, bodies } = rearAxleInTwoForms();
  const links = own.rear.links.filter(({ innerJoint }) => innerJoint.radial !== undefined);

  it.each(links.map(({ name }) => name))("gives the figures of the built-in one for %s", (name) => {
    for (const fault of [
      { kind: "torn", grade: 3 },
      { kind: "firmer", factor: 2 },
      { kind: "loose", play: 0.001 },
    ] as const) {
      const find = (family: Family): string =>
        positionsOf(family).find(
          ({ axle, side, joint }) =>
            axle === "rear" && side === "left" && joint?.link === name && joint.end === "inner",
        )?.id ?? "";
      const ask = (family: Family) =>
        effectOf(family, { corner: "rear-left", position: find(family), fault, condition: BRAKING });
      const [one, other] = [ask(own), ask(bodies)];
      expect(other.figures.map(({ key }) => key)).toEqual(one.figures.map(({ key }) => key));
      one.figures.forEach((figure, i) => {
        const same = other.figures[i];
        expect(same?.signSure, figure.key).toBe(figure.signSure);
        expect(Math.abs((same?.value ?? 9) - figure.value), `${name} ${fault.kind} ${figure.key}`).toBeLessThan(1e-9);
        expect(Math.abs((same?.u ?? 9) - figure.u), `u of ${name} ${fault.kind} ${figure.key}`).toBeLessThan(1e-9);
      });
      const bounds = ({ curves }: FaultEffect): readonly number[] =>
        curves.flatMap(({ lines }) => lines.flatMap(({ low, high }) => [...low, ...high]));
      const theirs = bounds(other);
      expect(theirs.length).toBe(bounds(one).length);
      expect(Math.max(...bounds(one).map((bound, i) => Math.abs(bound - (theirs[i] as number))))).toBeLessThan(1e-9);
    }
  });
});
