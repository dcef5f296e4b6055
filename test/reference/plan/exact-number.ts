/** A decimal number held exactly: units of 10^-scale. */
export interface Exact {
  readonly units: bigint;
  readonly scale: number;
}

export const nought: Exact = { units: 0n, scale: 0 };

/** The number as it is written in decimals. */
export function exact(value: number | string): Exact {
  const [mantissa = "0", exponent = "0"] = String(value).toLowerCase().split("e");
  const [whole = "0", fraction = ""] = mantissa.split(".");
  const scale = fraction.length - Number(exponent);
  const units = BigInt(`${whole}${fraction}`);
  return scale >= 0 ? { units, scale } : { units: units * 10n ** BigInt(-scale), scale: 0 };
}

const unitsAt = (a: Exact, scale: number): bigint => a.units * 10n ** BigInt(scale - a.scale);

export function plus(a: Exact, b: Exact): Exact {
  const scale = Math.max(a.scale, b.scale);
  return { units: unitsAt(a, scale) + unitsAt(b, scale), scale };
}

export const sum = (list: readonly Exact[]): Exact => list.reduce(plus, nought);

export const times = (a: Exact, b: Exact): Exact => ({ units: a.units * b.units, scale: a.scale + b.scale });

export function isMore(a: Exact, b: Exact): boolean {
  const scale = Math.max(a.scale, b.scale);
  return unitsAt(a, scale) > unitsAt(b, scale);
}

export const toNumber = (a: Exact): number => Number(a.units) / 10 ** a.scale;

/** Whole cents, halves away from zero. */
export function centsOf(a: Exact): number {
  const units = a.units < 0n ? -a.units : a.units;
  const step = 10n ** BigInt(Math.max(0, a.scale - 2));
  const scaled = a.scale < 2 ? units * 10n ** BigInt(2 - a.scale) : units;
  const cents = Number((scaled + step / 2n) / step);
  return cents === 0 ? 0 : a.units < 0n ? -cents : cents;
}
