import { describe, expect, it } from "vitest";
import { askDoor } from "../registry.ts";

const places = (door: string, input: unknown): readonly string[] => {
  const answer = askDoor(door, input);
  return "findings" in answer ? answer.findings.map((f) => `${f.code} ${f.path}`) : [];
};

const bush = { inner_radius_mm: 10, outer_radius_mm: 20, length_mm: 40, hardness_shore_a: 60 };

describe("rubber.rate", () => {
  it.each([
    ["radii exchanged", { ...bush, inner_radius_mm: 20, outer_radius_mm: 10 }, ["not-consistent outer_radius_mm"]],
    ["no rubber between", { ...bush, outer_radius_mm: 10 }, ["not-consistent outer_radius_mm"]],
    ["hardness and modulus", { ...bush, shear_modulus_n_per_mm2: 1 }, ["one-of-two hardness_shore_a"]],
    ["neither of them", { ...bush, hardness_shore_a: undefined }, ["one-of-two hardness_shore_a"]],
    ["a hardness beyond the relation", { ...bush, hardness_shore_a: 81 }, ["out-of-range hardness_shore_a"]],
    ["a length of nought", { ...bush, length_mm: 0 }, ["out-of-range length_mm"]],
    ["a negative force", { ...bush, hand_force_n: -5 }, ["out-of-range hand_force_n"]],
    [
      "a key in another unit",
      { ...bush, length_mm: undefined, length_cm: 4 },
      ["key-unit length_cm", "missing-key length_mm"],
    ],
    [
      "everything at once",
      { ...bush, outer_radius_mm: 5, shear_modulus_n_per_mm2: 0, hand_moment_nm: "x" },
      [
        "not-consistent outer_radius_mm",
        "one-of-two hardness_shore_a",
        "out-of-range shear_modulus_n_per_mm2",
        "wrong-type hand_moment_nm",
      ],
    ],
  ])("refuses %s", (_, input, expected) => {
    expect(places("rubber.rate", JSON.parse(JSON.stringify(input))).toSorted()).toEqual(expected.toSorted());
  });

  it("gives of the hand only what was asked", () => {
    expect(askDoor("rubber.rate", bush)).not.toHaveProperty("output.hand");
    const force = askDoor("rubber.rate", { ...bush, hand_force_n: 100 });
    expect(force).not.toHaveProperty("output.hand.torsional_deg");
    expect(force).toHaveProperty("output.hand.radial_mm");
    const moment = askDoor("rubber.rate", { ...bush, hand_moment_nm: 10 });
    expect(moment).not.toHaveProperty("output.hand.radial_mm");
    expect(moment).toHaveProperty("output.hand.torsional_deg");
  });
});

describe("rubber.firmer", () => {
  const parts = { old_hardness_shore_a: 55, new_hardness_shore_a: 65 };

  it("is the ratio of the moduli that rubber.rate gives, in the middle of its range", () => {
    const modulus = (hardness: number): number => {
      const answer = askDoor("rubber.rate", { ...bush, hardness_shore_a: hardness });
      if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
      return (answer.output as { shear_modulus_n_per_mm2: number }).shear_modulus_n_per_mm2;
    };
    const answer = askDoor("rubber.firmer", parts);
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const { factor, factor_low, factor_high, surely_firmer } = answer.output as Record<string, number>;
    expect(factor).toBeCloseTo(modulus(65) / modulus(55), 12);
    expect([factor_low, factor_high].map((end) => end?.toFixed(2))).toEqual(["1.07", "2.08"]);
    expect(surely_firmer).toBe(true);
    expect(askDoor("rubber.firmer", { ...parts, old_hardness_shore_a: 60 })).toMatchObject({
      output: { surely_firmer: false },
    });
  });

  it.each([
    ["a softer part", { ...parts, new_hardness_shore_a: 50 }, ["not-consistent new_hardness_shore_a"]],
    ["a part as hard", { ...parts, new_hardness_shore_a: 55 }, ["not-consistent new_hardness_shore_a"]],
    ["a hardness beyond the relation", { ...parts, new_hardness_shore_a: 96 }, ["out-of-range new_hardness_shore_a"]],
    ["a hardness in words", { ...parts, old_hardness_shore_a: "55" }, ["wrong-type old_hardness_shore_a"]],
    ["one hardness alone", { new_hardness_shore_a: 65 }, ["missing-key old_hardness_shore_a"]],
  ])("refuses %s", (_, input, expected) => {
    expect(places("rubber.firmer", input)).toEqual(expected);
  });
});

const wheel = {
  mass_kg: 42,
  circumference_mm: 1980,
  harmonics: [{ order: 1, torque_amplitude_nm: 20 }],
  speeds_km_per_h: [90],
  speed_range_km_per_h: [40, 200],
};
const hydraulic = {
  rubber_n_per_mm: 320,
  loss_factor: 0.08,
  volume_n_per_mm: 410,
  fluid_inertia_kg: 31,
  fluid_damping_n_s_per_mm: 1.9,
  frequencies_hz: [10],
  search_hz: [1, 60],
};

describe("rubber.hydraulic", () => {
  it.each([
    ["a range the wrong way round", { ...hydraulic, search_hz: [30, 10] }, ["not-consistent search_hz"]],
    ["a range of no width", { ...hydraulic, search_hz: [10, 10] }, ["not-consistent search_hz"]],
    ["a frequency of nought", { ...hydraulic, frequencies_hz: [0] }, ["out-of-range frequencies_hz[0]"]],
    [
      "a fluid without damping",
      { ...hydraulic, fluid_damping_n_s_per_mm: 0 },
      ["out-of-range fluid_damping_n_s_per_mm"],
    ],
    ["a negative loss", { ...hydraulic, loss_factor: -0.1 }, ["out-of-range loss_factor"]],
    [
      "a harmonic without strength",
      { ...hydraulic, wheel: { ...wheel, harmonics: [{ order: 1 }] } },
      ["one-of-two wheel.harmonics[0]"],
    ],
    [
      "a harmonic below the turn of the wheel",
      { ...hydraulic, wheel: { ...wheel, harmonics: [{ order: 0.5, torque_amplitude_nm: 3 }] } },
      ["out-of-range wheel.harmonics[0].order"],
    ],
    [
      "a thickness without a disc",
      { ...hydraulic, wheel: { ...wheel, harmonics: [{ order: 1, thickness_peak_to_peak_mm: 0.01 }] } },
      ["missing-key wheel.disc"],
    ],
    [
      "speeds the wrong way round",
      { ...hydraulic, wheel: { ...wheel, speed_range_km_per_h: [200, 40] } },
      ["not-consistent wheel.speed_range_km_per_h"],
    ],
    ["a resonance nothing damps", { ...hydraulic, loss_factor: 0, wheel }, ["out-of-range loss_factor"]],
  ])("refuses %s", (_, input, expected) => {
    expect(places("rubber.hydraulic", input)).toEqual(expected);
  });

  it("answers rubber without loss where its resonance is not met", () => {
    const slow = { ...wheel, speed_range_km_per_h: [40, 60], speeds_km_per_h: [50] };
    expect(places("rubber.hydraulic", { ...hydraulic, loss_factor: 0, wheel: slow })).toEqual([]);
  });

  it("gives nothing of a wheel that was not asked for", () => {
    const answer = askDoor("rubber.hydraulic", hydraulic);
    expect(answer).not.toHaveProperty("output.response");
    expect(answer).not.toHaveProperty("output.worst");
    expect(answer).toHaveProperty("output.leaked.peak_loss", null);
  });

  it("a thickness shakes as the torque does that it makes: 2 mu k_c (p/2) r", () => {
    const disc = { effective_radius_mm: 128, friction: 0.4, caliper_n_per_mm: 30_000 };
    const byThickness = { ...wheel, disc, harmonics: [{ order: 1, thickness_peak_to_peak_mm: 0.01 }] };
    const torque = 2 * 0.4 * 30_000 * 0.005 * 0.128;
    const byTorque = { ...wheel, harmonics: [{ order: 1, torque_amplitude_nm: torque }] };
    const force = (of: unknown): unknown => {
      const answer = askDoor("rubber.hydraulic", { ...hydraulic, wheel: of });
      return "output" in answer
        ? (answer.output as { response: { force_amplitude_n: number }[] }).response[0]?.force_amplitude_n
        : answer;
    };
    expect(force(byThickness)).toBeCloseTo(force(byTorque) as number, 9);
    expect(force(byTorque)).toBeCloseTo(torque / (1.98 / (2 * Math.PI)), 9);
  });
});
