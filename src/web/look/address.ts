/** Search part of an address as plain words: no quotes, and "/", ":" and "~" left readable. */
export const formatSearch = (search: Record<string, unknown>): string => {
  const pairs = Object.entries(search).flatMap(([key, value]) =>
    value === undefined || value === null || value === "" ? [] : [`${key}=${encodeReadable(String(value))}`],
  );
  return pairs.length === 0 ? "" : `?${pairs.join("&")}`;
};

const encodeReadable = (text: string): string =>
  encodeURIComponent(text).replaceAll("%2F", "/").replaceAll("%3A", ":").replaceAll("%2C", ",");

/** Every value of the search part of an address as text. */
export const parseSearch = (search: string): Record<string, string> => Object.fromEntries(new URLSearchParams(search));
/**
 * A reader of the search part of an address under which nothing else reaches the page: the router lays what a reader returns
 * over what stands in the address, so that a value the reader refused would come through as it was written.
 */
export const onlyWhatIsRead =
  <Search extends object>(read: (search: Record<string, unknown>) => Search) =>
  (search: Record<string, unknown>): Search => {
    const refused: Record<string, undefined> = Object.fromEntries(Object.keys(search).map((key) => [key, undefined]));
    return { ...refused, ...read(search) };
  };
