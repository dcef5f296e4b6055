const plainKey = /^[A-Za-z_][A-Za-z0-9_-]*$/;
const longestKey = 60;

/** Writes a path as dots and [i]: links[2].inner_mm[0]; "" is the whole document. Long and odd keys are quoted and cut. */
export const formatPath = (path: readonly PropertyKey[]): string => {
  let text = "";
  for (const step of path) {
    if (typeof step === "number") text += `[${step}]`;
    else {
      const key = String(step);
      if (plainKey.test(key) && key.length <= longestKey) text += text === "" ? key : `.${key}`;
      else text += `[${JSON.stringify(key.slice(0, longestKey))}]`;
    }
  }
  return text;
};

/** The value at a path inside a document, or undefined where the path leads nowhere. */
export const valueAt = (document: unknown, path: readonly PropertyKey[]): unknown => {
  let value = document;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
};
