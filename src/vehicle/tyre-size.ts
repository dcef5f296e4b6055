import { type Metres, metresFromMm } from "#quantity";

/** An inch in tenths of a millimetre: whole numbers keep the arithmetic exact. */
const TENTHS_PER_INCH = 254;
/** Width / aspect ratio, construction letter (R radial, D diagonal, B belted, with or without Z) and rim diameter in inches. */
const DESIGNATION = /^(?:P|LT)?\s*(\d{3})\s*\/\s*(\d{2,3})\s*(?:Z?R|D|B|-)\s*(\d{2}(?:\.\d)?)\b/i;

/** Another size behind the first: two axles with tyres of their own, or an old and a new size. */
const SECOND = /\d{3}\s*\/\s*\d{2}/;

/** What the size on a sidewall says in plain arithmetic, in metres. */
export interface TyreSize {
  readonly width: Metres;
  /** Height of the sidewall as a share of the width. */
  readonly aspect: number;
  readonly rimDiameter: Metres;
  /** Half the rim diameter plus one sidewall. */
  readonly freeRadius: Metres;
}

/**
 * Reads one metric tyre size such as "205/55 R16" (load and speed behind the rim diameter are not looked at).
 * @returns the nominal dimensions, or null where the text is no such size or its figures are none of a car tyre
 * Source: the size designation itself (diameter = 2 x width x aspect / 100 + rim x 25.4 mm); bounds invented.
 */
export function parseTyreSize(text: string): TyreSize | null {
  const found = DESIGNATION.exec(text.trim());
  if (!found || SECOND.test(text.trim().slice(found[0].length))) return null;
  const [widthMm, aspectPercent, rimInches] = found.slice(1).map(Number) as [number, number, number];
  const plausible =
    widthMm >= 105 &&
    widthMm <= 395 &&
    aspectPercent >= 20 &&
    aspectPercent <= 100 &&
    rimInches >= 10 &&
    rimInches <= 26;
  if (!plausible) return null;
  const rimMm = (rimInches * TENTHS_PER_INCH) / 10;
  return {
    width: metresFromMm(widthMm),
    aspect: aspectPercent / 100,
    rimDiameter: metresFromMm(rimMm),
    freeRadius: metresFromMm((rimInches * TENTHS_PER_INCH * 5 + widthMm * aspectPercent) / 100),
  };
}
