/** The longest id a family may have. */
const LONGEST = 60;

/** An id made of a name: lower-case words joined by hyphens; "" where the name has none. */
const idOf = (name: string): string =>
  name
    .normalize("NFD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .slice(0, LONGEST)
    .replaceAll(/^-+|-+$/g, "");

/** The id a copy of this name gets: the name in lower-case words, numbered where it is taken; null where the name has no letters. */
export const copyId = (name: string, taken: readonly string[]): string | null => {
  const id = idOf(name);
  if (id === "") return null;
  for (let number = 1; ; number++) {
    const tried = number === 1 ? id : `${id.slice(0, LONGEST - 5)}-${number}`;
    if (!taken.includes(tried)) return tried;
  }
};
