import type { LookContent } from "#casework";
import type { Finding } from "#numeric";
import type { QuantityName } from "#vehicle";
import { plausibleReadings } from "./plausible-readings.ts";
import { type ReadingUnit, readingUnits, valueKey } from "./reading-unit.ts";

/** How a figure may have been meant: words, and what it then is in the unit of its key. */
interface OtherMeaning {
  readonly words: string;
  readonly convert: (typed: number) => number;
}

const byFactor = (words: string, factor: number): OtherMeaning => ({ words, convert: (typed) => typed * factor });

/** Units people type where another one is asked for; factors exact by definition (inch, pound and pound-force of 1959). */
const otherUnits: Readonly<Record<ReadingUnit["suffix"], readonly OtherMeaning[]>> = {
  mm: [byFactor("in inches", 25.4), byFactor("in metres", 1000), byFactor("in hundredths of a millimetre", 0.01)],
  deg: [byFactor("in minutes of arc", 1 / 60)],
  bar: [byFactor("in psi", 0.068_947_572_931_683_6), byFactor("in kPa", 0.01)],
  c: [{ words: "in degrees Fahrenheit", convert: (typed) => (typed - 32) / 1.8 }],
  n: [byFactor("in kilograms", 9.806_65)],
  nm: [byFactor("in pound feet", 1.355_817_948_331_4)],
  "": [],
};

const slips: readonly OtherMeaning[] = [
  byFactor("with the point one place off", 0.1),
  byFactor("with the point two places off", 0.01),
];

const shown = (value: number): string => String(Number(value.toPrecision(4)));

/** Angles to a side; everything else that is read cannot be less than nothing. */
const signed: readonly QuantityName[] = ["camber", "toe", "caster"];

const unitWords: Readonly<Record<ReadingUnit["suffix"], string>> = {
  mm: " mm",
  deg: "°",
  bar: " bar",
  c: " °C",
  n: " N",
  nm: " N·m",
  "": "",
};

const quantityWords = (quantity: QuantityName): string => quantity.replaceAll("-", " ");

/** A reading that nobody can have taken: less than nothing of what has no sign. Confirming it does not make it one. */
export const checkBelowNought = (content: LookContent): readonly Finding[] => {
  if (content.kind !== "reading" || signed.includes(content.quantity)) return [];
  const { suffix, toOutside } = readingUnits[content.quantity];
  const typed = toOutside(content.value);
  if (typed >= 0) return [];
  return [
    {
      code: "reading-below-nought",
      path: `content.${valueKey(content.quantity)}`,
      got: `${shown(typed)}${unitWords[suffix]}`,
      needed: `${quantityWords(content.quantity)} of 0 or more`,
      hint: `Was ${shown(-typed)}${unitWords[suffix]} meant?`,
    },
  ];
};

const mostNamed = 2;

/**
 * What is odd about a reading: it lies outside what any car shows. A figure ten times too large or in another unit is
 * said as it was probably meant.
 */
export const checkReading = (content: LookContent): readonly Finding[] => {
  if (content.kind !== "reading") return [];
  const { suffix, toOutside } = readingUnits[content.quantity];
  const { low, high, origin } = plausibleReadings[content.quantity];
  const typed = toOutside(content.value);
  const impossible = checkBelowNought(content);
  if (impossible.length > 0) return impossible;
  const fits = (value: number): boolean => value >= low && value <= high;
  if (fits(typed)) return [];
  const meant = [...slips, ...otherUnits[suffix]]
    .map(({ words, convert }) => ({ words, value: convert(typed) }))
    .filter(({ value }) => fits(value))
    .slice(0, mostNamed)
    .map(({ words, value }) => `${words} it is ${shown(value)}${unitWords[suffix]}`);
  const guess = meant.length === 0 ? "" : `Typed ${meant.join("; ")}. `;
  return [
    {
      code: "reading-implausible",
      path: `content.${valueKey(content.quantity)}`,
      got: `${shown(typed)}${unitWords[suffix]}`,
      needed: `${quantityWords(content.quantity)} from ${low} to ${high}${unitWords[suffix]}, what cars show (${origin}; no limit)`,
      hint: `${guess}Read it again; if it stands, send it with "confirmed": true.`,
    },
  ];
};
