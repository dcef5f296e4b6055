import { type NumberBounds, parseTypedNumber, type TypedNumber, typedNumberTrouble } from "./parse-typed-number.ts";
import { splitUnit } from "./written-units.ts";

/** What a person typed into a field of a unit, in that unit. */
export type TypedQuantity = Exclude<TypedNumber, { readonly kind: "number" }> | TypedFigure;

interface TypedFigure {
  readonly kind: "number";
  readonly value: number;
  /** Another unit or way of writing it came in, as a page writes it: "32 psi", "0°07'"; null: as the field asks for it. */
  readonly as: string | null;
}

const SIGN = /^([-‐‑‒–−﹣－+]?)\s*/u;
const MINUTES = /^(?:(\d+)\s*[°º]\s*)?(?:(\d+(?:[.,]\d+)?)\s*['’′]?)?\s*(?:(\d+(?:[.,]\d+)?)\s*(?:["”″]|''))?$/u;
const FRACTION = /^(\d{1,2})\s*[/⁄]\s*(\d{1,2})$/u;

const figure = (text: string | undefined): number => Number((text ?? "0").replace(",", "."));

/** Degrees from degrees, minutes and seconds of arc: "0°07'", "7'", "-1°30'"; null where it is not written so. */
const parseMinutes = (text: string): number | null => {
  const sign = SIGN.exec(text)?.[1] ?? "";
  const [all, degrees, minutes, seconds] = MINUTES.exec(text.replace(SIGN, "")) ?? [];
  if (all === undefined || !/['’′"”″]/u.test(all)) {
    if (degrees === undefined || minutes === undefined) return null;
  }
  if (minutes === undefined && seconds === undefined) return null;
  const [m, s] = [figure(minutes), figure(seconds)];
  if ((degrees !== undefined && m >= 60) || (minutes !== undefined && s >= 60)) return null;
  const value = figure(degrees) + m / 60 + s / 3600;
  return sign === "" || sign === "+" ? value : -value;
};

/** A fraction of an inch: "5/32"; null where it is none. */
const parseFraction = (text: string): number | null => {
  const [, above, below] = FRACTION.exec(text.trim()) ?? [];
  return above === undefined || Number(below) === 0 ? null : Number(above) / Number(below);
};

const inside = ({ low, high, ...rest }: NumberBounds, convert: (value: number) => number): NumberBounds => {
  // A field's bounds in the unit that was written, for units that differ by a factor and an offset.
  const zero = convert(0);
  const factor = convert(1) - zero;
  return {
    ...rest,
    ...(low === undefined ? {} : { low: (low - zero) / factor }),
    ...(high === undefined ? {} : { high: (high - zero) / factor }),
  };
};

/**
 * Reads what a person wrote into a field with a unit, in that unit: "2.3 bar", "32 psi", "0.95 in", "5/32 in", "0°07'", "7'",
 * "−0.12". Without a unit behind it a number is in the unit of the field.
 * @param unit of the field, as quantities name it: "mm", "°", "bar"
 * @param bounds in that unit; as of parseTypedNumber
 */
export const parseTypedQuantity = (text: string, unit: string, bounds: NumberBounds = {}): TypedQuantity => {
  const trimmed = text.trim();
  const minutes = unit === "°" ? parseMinutes(trimmed) : null;
  if (minutes !== null)
    return { kind: "number", value: minutes === 0 ? 0 : minutes, as: trimmed.replace(/^[^\d+]\s*/u, "−") };
  const split = splitUnit(trimmed, unit);
  if (split === null) {
    const read = parseTypedNumber(text, bounds);
    return read.kind === "number" ? { ...read, as: null } : read;
  }
  const { name, convert } = split.unit;
  const isOther = name !== unit;
  const as = isOther ? `${split.number.trim().replace(/^[^\d+.,]\s*/u, "−")} ${name}` : null;
  const part = name === "in" ? parseFraction(split.number) : null;
  if (part !== null) return { kind: "number", value: convert(part), as };
  const read = parseTypedNumber(split.number, isOther ? inside(bounds, convert) : bounds);
  if (read.kind === "unclear") {
    const [grouped, decimal] = read.readings;
    return { kind: "unclear", readings: [convert(grouped), convert(decimal)] };
  }
  return read.kind === "number" ? { kind: "number", value: convert(read.value), as } : read;
};

/** What keeps a text from being one figure of a field, in plain words; null where nothing does. */
export const typedQuantityTrouble = (text: string, bounds: NumberBounds, unit: string): string | null =>
  parseTypedQuantity(text, unit, bounds).kind === "number" ? null : typedNumberTrouble(text, bounds, unit);
