/** What a program that sends records is told; a person has buttons for it. */
const FOR_PROGRAMS: readonly (readonly [RegExp, string])[] = [
  [/\s*(Read it again; if|If) it stands, send it with "confirmed": true\./g, ""],
  [
    /set odometer_offset_km of the car to what the new one lacks \(at least ([^)]*)\)/g,
    "say so below; the new one lacks at least $1",
  ],
  [/send this one under a new id/gi, "record it anew"],
  [/\s*The version stands in the ETag of GET\./g, " Load the page again to see what is on record."],
  [/GET \/api\/cars lists them\./g, "Today lists them."],
  [/Send the photo to \/api\/photos; it finds its look by its hash\./g, "Take the photo again."],
  [/\s*GET \/api\/\S+ lists [^.]*\./g, ""],
];

/** A hint without what only a sending program needs. */
export const plainHint = (hint: string): string =>
  FOR_PROGRAMS.reduce((text, [words, instead]) => text.replace(words, instead), hint).trim();

const UNITS = /_(km|mm|m|deg|bar|nm|kg|n|c|cents|95)$/;

/** A field of a record by its name in words: "document.odometer_km" as "odometer", "visits[1].odometer_km" as "odometer, number 2". */
export const fieldWords = (path: string): string => {
  const parts = path.split(".");
  const last = (parts.at(-1) ?? "").replace(/\[\d+\]$/, "");
  const number = /\[(\d+)\]/.exec(path)?.[1];
  const named = last.replace(UNITS, "").replaceAll("_", " ");
  const words = named === "" || named === "document" || named === "content" ? "the record" : named;
  return number === undefined || /^looks\[/.test(path) ? words : `${words}, number ${Number(number) + 1}`;
};

/** A place by its id in words: "front-left/disc/thickness" as "front left, disc, thickness". */
export const placeWords = (place: string): string =>
  place
    .split("/")
    .map((part) => part.replaceAll("-", " "))
    .join(", ");
