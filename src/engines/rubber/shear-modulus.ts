import type { Pascals } from "#quantity";

/** Hardness the relation is used on, Shore A (from memory). */
export const HARDNESS_RANGE = [20, 80] as const;
/** Single readings of one part differ by as much, Shore A (hardness-scatter in docs/sources.md). */
export const HARDNESS_SCATTER = 5;

/**
 * Shear modulus of rubber (Pa) from its hardness (Shore A, 20 to 80), rubber being incompressible: Gent's relation
 * E = 0.0981 (56 + 7.62336 S) / (0.137505 (254 - 2.54 S)) in N/mm², G = E/3. Five points of hardness are about a fifth
 * of the modulus, and compounds of one hardness differ: a first figure, no measurement (key gent-hardness in
 * docs/sources.md).
 */
export function computeShearModulus(hardness: number): Pascals {
  const youngPerMm2 = (0.0981 * (56 + 7.62336 * hardness)) / (0.137505 * (254 - 2.54 * hardness));
  return (youngPerMm2 / 3) * 1e6;
}
