import {
  computeDynamicStiffness,
  computeLeakedResonance,
  computeOrderFrequency,
  computeRoadForce,
  computeTorqueRipple,
  computeWheelResponse,
  type FluidState,
  type HydraulicBush,
  solvePeakLoss,
  solveWorstResponse,
} from "#engines/rubber";
import type { Finding } from "#numeric";
import {
  degreesFromRadians,
  metresFromMm,
  metresPerSecondFromKmPerHour,
  mmFromMetres,
  newtonSecondsPerMetreFromPerMm,
  newtonsPerMetreFromPerMm,
  perMmFromNewtonsPerMetre,
} from "#quantity";
import type { Door, DoorAnswer } from "../door.ts";
import { checkHydraulic } from "./hydraulic-check.ts";
import { type HydraulicInput, type HydraulicWheel, hydraulicInput, hydraulicOutput } from "./hydraulic-schema.ts";

const bushFromWire = (wire: HydraulicInput): HydraulicBush => ({
  rubber: newtonsPerMetreFromPerMm(wire.rubber_n_per_mm),
  lossFactor: wire.loss_factor,
  volume: newtonsPerMetreFromPerMm(wire.volume_n_per_mm),
  fluidInertia: wire.fluid_inertia_kg,
  fluidDamping: newtonSecondsPerMetreFromPerMm(wire.fluid_damping_n_s_per_mm),
});

function formatState(bush: HydraulicBush, state: FluidState, frequencies: readonly number[]) {
  return frequencies.map((frequency) => {
    const { magnitude, lossAngle } = computeDynamicStiffness(bush, state, frequency);
    return {
      frequency_hz: frequency,
      stiffness_n_per_mm: perMmFromNewtonsPerMetre(magnitude),
      loss_angle_deg: degreesFromRadians(lossAngle),
    };
  });
}

/** Torque amplitude of a harmonic, given or from its thickness. */
function torqueOf(harmonic: HydraulicWheel["harmonics"][number], disc: HydraulicWheel["disc"]): number {
  const { thickness_peak_to_peak_mm: thickness, torque_amplitude_nm: torque } = harmonic;
  if (torque !== undefined) return torque;
  if (thickness === undefined || disc === undefined) throw new Error("a thickness without a disc passed the check");
  return computeTorqueRipple(metresFromMm(thickness), {
    effectiveRadius: metresFromMm(disc.effective_radius_mm),
    friction: disc.friction,
    caliper: newtonsPerMetreFromPerMm(disc.caliper_n_per_mm),
  });
}

function computeWheel(bush: HydraulicBush, wheel: HydraulicWheel) {
  const { mass_kg: mass } = wheel;
  const circumference = metresFromMm(wheel.circumference_mm);
  const frequencyAt = (order: number, kmPerHour: number): number =>
    computeOrderFrequency(order, metresPerSecondFromKmPerHour(kmPerHour), circumference);
  // The amplitude of the force is the same at every speed.
  const forces = wheel.harmonics.map((harmonic) => ({
    order: harmonic.order,
    force: computeRoadForce(torqueOf(harmonic, wheel.disc), circumference),
  }));
  const response = wheel.speeds_km_per_h.flatMap((speed) =>
    forces.map(({ order, force }) => {
      const frequency = frequencyAt(order, speed);
      const sound = mmFromMetres(computeWheelResponse(bush, "sound", mass, frequency));
      const leaked = mmFromMetres(computeWheelResponse(bush, "leaked", mass, frequency));
      return {
        speed_km_per_h: speed,
        order,
        frequency_hz: frequency,
        force_amplitude_n: force,
        sound_mm_per_n: sound,
        leaked_mm_per_n: leaked,
        sound_mm: force * sound,
        leaked_mm: force * leaked,
      };
    }),
  );
  const [from, to] = wheel.speed_range_km_per_h;
  const worst = forces.map(({ order, force }) => {
    const perHz = 1 / frequencyAt(order, 1);
    const of = (state: FluidState) => {
      const found = solveWorstResponse(bush, state, mass, [frequencyAt(order, from), frequencyAt(order, to)]);
      const end = found.frequency === frequencyAt(order, from) ? from : to;
      return {
        speed_km_per_h: found.atEnd ? end : found.frequency * perHz,
        mm: force * mmFromMetres(found.response),
        at_end: found.atEnd,
      };
    };
    return { order, sound: of("sound"), leaked: of("leaked") };
  });
  return { response, worst };
}

/** Rubber without any loss lets a wheel on its resonance swing without end once the fluid is out. */
function checkResonance(bush: HydraulicBush, wheel: HydraulicWheel): Finding[] {
  if (bush.lossFactor > 0) return [];
  const resonance = computeLeakedResonance(bush, wheel.mass_kg);
  const [from, to] = wheel.speed_range_km_per_h;
  const circumference = metresFromMm(wheel.circumference_mm);
  const speedOf = (order: number): number =>
    resonance / computeOrderFrequency(order, metresPerSecondFromKmPerHour(1), circumference);
  const met = wheel.harmonics
    .map(({ order }) => speedOf(order))
    .find((speed) => (speed >= from && speed <= to) || wheel.speeds_km_per_h.includes(speed));
  if (met === undefined) return [];
  return [
    {
      code: "out-of-range",
      path: "loss_factor",
      got: "0",
      needed: `more than 0: at ${met.toPrecision(4)} km/h the wheel meets its resonance on the bare rubber, undamped`,
      hint: "Natural rubber in a bush has about 0.03 to 0.15 (from memory).",
    },
  ];
}

export const rubberHydraulic: Door<HydraulicInput> = {
  id: "rubber.hydraulic",
  summary: "Stiffness and loss angle of a hydraulic bush, sound and leaked, and how the wheel shakes under braking",
  input: hydraulicInput,
  output: hydraulicOutput,
  relation:
    "K = k_r(1 + i eta) + k_v z/(k_v + z), z = i w c - w² m; leaked k_r(1 + i eta); torque 2 mu k_c (p/2) r; wheel 1/|K - M w²|",
  source: "fluid-branch, torque-ripple, fore-aft-wheel; docs/method/rubber.md",
  accuracy: "1e-9 (docs/verification.md); the wheel's movement well below 30 Hz",
  check: checkHydraulic,
  compute(wire): DoorAnswer {
    const bush = bushFromWire(wire);
    const findings = wire.wheel ? checkResonance(bush, wire.wheel) : [];
    if (findings.length > 0) return { findings };
    const peak = solvePeakLoss(bush, wire.search_hz);
    return {
      output: {
        sound: {
          frequencies: formatState(bush, "sound", wire.frequencies_hz),
          peak_loss: {
            frequency_hz: peak.frequency,
            loss_angle_deg: degreesFromRadians(peak.lossAngle),
            at_end: peak.atEnd,
          },
        },
        leaked: { frequencies: formatState(bush, "leaked", wire.frequencies_hz), peak_loss: null },
        ...(wire.wheel && computeWheel(bush, wire.wheel)),
      },
    };
  },
};
