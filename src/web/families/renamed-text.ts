/** Where the string that begins at a double quote ends, one past its closing quote. */
const endOfString = (text: string, start: number): number => {
  let at = start + 1;
  while (at < text.length && text[at] !== '"') at += text[at] === "\\" ? 2 : 1;
  return at + 1;
};

/** Where the value of the key "name" of the whole object stands in a JSON text; null where it has none. */
const placeOfName = (text: string): readonly [start: number, end: number] | null => {
  let depth = 0;
  let at = 0;
  while (at < text.length) {
    const letter = text[at];
    if (letter === "{" || letter === "[") depth++;
    if (letter === "}" || letter === "]") depth--;
    if (letter !== '"') {
      at++;
      continue;
    }
    const end = endOfString(text, at);
    const value = /^\s*:\s*(?=")/.exec(text.slice(end));
    if (depth === 1 && value !== null && text.slice(at, end) === '"name"') {
      const start = end + value[0].length;
      return [start, endOfString(text, start)];
    }
    at = end;
  }
  return null;
};

/** The text of a family file under another name, every other letter as it was; null where it has no name to replace. */
export const renamedText = (text: string, name: string): string | null => {
  const place = placeOfName(text);
  return place === null ? null : `${text.slice(0, place[0])}${JSON.stringify(name)}${text.slice(place[1])}`;
};
