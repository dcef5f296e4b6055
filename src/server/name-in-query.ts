/** A name that long does not fit any sheet; the same bound as of records. */
const LONGEST = 200;

/** The name a request says its sheet is made by (`?by=`); null where it says none. */
export const nameInQuery = (query: unknown): string | null => {
  const by = typeof query === "object" && query !== null && "by" in query ? query.by : null;
  const name = typeof by === "string" ? by.trim().slice(0, LONGEST) : "";
  return name === "" ? null : name;
};
