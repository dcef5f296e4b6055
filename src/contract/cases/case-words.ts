import { z } from "zod";

/** Longer than anything a person writes into one field (invented bound). */
const longestText = 20_000;
const longestName = 200;

/** What no database keeps as it was typed: the character NUL, and halves of a character pair. */
const isKeepable = (text: string): boolean => !text.includes("\u0000") && !/\p{Surrogate}/u.test(text);

const keepable = (schema: z.ZodString): z.ZodString =>
  schema.refine(isKeepable, {
    message: "text without the character NUL and without half characters",
    params: { finding: { code: "wrong-format", got: "text that cannot be kept as it stands" } },
  });

/** A person's own words, which may be empty. */
export const freeText = keepable(z.string().max(longestText));
/** A line of words that says something. */
export const line = keepable(z.string().trim().min(1).max(longestName));
/** A line of words that may be empty. */
export const shortText = keepable(z.string().trim().max(longestName));
/** Who did it, as the workshop writes its people: initials or a name. */
export const person = line;
/** The id of a car or visit: lower-case words, digits and hyphens. */
export const recordId = z
  .string()
  .max(64)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "lower-case words, digits and hyphens, such as car-0007");
/** A place on a car: words joined by hyphens, steps joined by slashes. */
export const place = z
  .string()
  .max(160)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*(\/[a-z0-9]+(-[a-z0-9]+)*)*$/, "a place such as front-left/lower-arm/ball-joint");
/** A key of one of the program's tables. */
export const tableKey = z
  .string()
  .max(80)
  .regex(/^[a-z0-9]+([-/][a-z0-9]+)*$/, "lower-case words joined by hyphens");
/** A UUID of version 7 (RFC 9562, 5.7, from memory), in lower case: it begins with the time it was made. */
export const uuidV7 = z
  .string()
  .regex(
    /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
    "a UUID of version 7 in lower case, such as 01890a5d-ac96-774b-bcce-b302099a8057",
  );
/** SHA-256 of the bytes of a photo. */
export const photoHash = z
  .string()
  .regex(/^[0-9a-f]{64}$/, "64 hexadecimal digits in lower case, as POST /api/photos answers");

const daysIn = (year: number, month: number): number =>
  month === 2
    ? year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
      ? 29
      : 28
    : [4, 6, 9, 11].includes(month)
      ? 30
      : 31;

const isDay = (text: string): boolean => {
  const [, year, month, day] = (/^(\d{4})-(\d{2})-(\d{2})/.exec(text) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined) return false;
  return year >= 1900 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
};

/** A day of the calendar. */
export const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, "a date like 2031-05-14")
  .refine(isDay, { message: "a day of the calendar", params: { finding: { code: "out-of-range" } } });
/** A moment with its offset from UTC. */
export const moment = z
  .string()
  .regex(
    /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,9})?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/,
    "a moment with its offset, like 2031-05-14T09:30:00+02:00",
  )
  .refine(isDay, { message: "a day of the calendar", params: { finding: { code: "out-of-range" } } });

/** A distance on an odometer, in kilometres. */
export const odometer = z.number().min(0).max(3_000_000);
/** An amount of money in hundredths. */
export const cents = z.number().int().min(0).max(100_000_000);

/** A key that may be left out or null where there is nothing to say. */
export const orNothing = <T extends z.ZodType>(schema: T): z.ZodDefault<z.ZodNullable<T>> =>
  z.nullable(schema).default(null as never);
