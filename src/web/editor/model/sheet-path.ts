/** Where something stands in a sheet: keys and places in lists, from the outside in. */
export type SheetPath = readonly (string | number)[];

/** Written as findings write it: front.links[2].inner_mm[0]; "" is the whole sheet. */
export const formatSheetPath = (path: SheetPath): string =>
  path.reduce<string>(
    (text, step) => (typeof step === "number" ? `${text}[${step}]` : text === "" ? step : `${text}.${step}`),
    "",
  );

/** Reads a path as findings write it; null where the text is none. */
export const parseSheetPath = (text: string): SheetPath | null => {
  if (text === "") return [];
  const steps = text.match(/[^.[\]]+|\[\d+\]/g) ?? [];
  const path = steps.map((step) => (step.startsWith("[") ? Number(step.slice(1, -1)) : step));
  return formatSheetPath(path) === text ? path : null;
};

/** True where one place is the other or lies inside it, both as findings write them. */
export const isAtOrIn = (inner: string, outer: string): boolean =>
  outer === "" || inner === outer || inner.startsWith(`${outer}.`) || inner.startsWith(`${outer}[`);
