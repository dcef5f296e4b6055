import type { Finding } from "#numeric";
import { entriesOf, isNumber, isObject, type Loose } from "./loose-corner.ts";

/** A range must rise: neither empty nor the wrong way round. */
function checkRange(x: unknown, path: string): Finding[] {
  if (!Array.isArray(x) || x.length !== 2) return [];
  const [low, high]: readonly unknown[] = x;
  if (!isNumber(low) || !isNumber(high) || low < high) return [];
  return [
    {
      code: "not-consistent",
      path,
      got: `[${low}, ${high}]`,
      needed: "[from, to] with from below to",
      hint: low === high ? "A range of no width has nothing to search." : "Perhaps the two are exchanged.",
    },
  ];
}

function checkWheel(wheel: Loose): Finding[] {
  const findings = checkRange(wheel.speed_range_km_per_h, "wheel.speed_range_km_per_h");
  let thickness: string | null = null;
  for (const [i, harmonic] of entriesOf(wheel.harmonics)) {
    const path = `wheel.harmonics[${i}]`;
    const byThickness = harmonic.thickness_peak_to_peak_mm !== undefined;
    const byTorque = harmonic.torque_amplitude_nm !== undefined;
    if (byThickness) thickness ??= `${path}.thickness_peak_to_peak_mm`;
    if (byThickness === byTorque)
      findings.push({
        code: "one-of-two",
        path,
        got: byThickness
          ? "both thickness_peak_to_peak_mm and torque_amplitude_nm"
          : "neither thickness_peak_to_peak_mm nor torque_amplitude_nm",
        needed: "exactly one of thickness_peak_to_peak_mm and torque_amplitude_nm",
        hint: "Either says how strongly this harmonic pulls.",
      });
  }
  if (thickness !== null && wheel.disc === undefined)
    findings.push({
      code: "missing-key",
      path: "wheel.disc",
      got: `no disc, but ${thickness}`,
      needed: "effective_radius_mm, friction and caliper_n_per_mm of the brake",
      hint: "Without the brake a thickness makes no torque; give torque_amplitude_nm if that is what was measured.",
    });
  return findings;
}

/** Everything about a hydraulic bush and its wheel that a schema cannot see. */
export function checkHydraulic(document: unknown): readonly Finding[] {
  if (!isObject(document)) return [];
  return [
    ...checkRange(document.search_hz, "search_hz"),
    ...(isObject(document.wheel) ? checkWheel(document.wheel) : []),
  ];
}
