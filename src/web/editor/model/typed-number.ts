const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i;

/**
 * What was typed into a field for a number.
 * @returns undefined for nothing, the number, or the text itself where it is none, so that the checks can say so
 */
export const parseTypedNumber = (text: string): number | string | undefined => {
  const typed = text.trim().replace("−", "-");
  if (typed === "") return undefined;
  return NUMBER.test(typed) ? Number(typed.replace(",", ".")) : text;
};

/** A value of a sheet as the text of a field; "" for nothing. */
export const formatTyped = (value: unknown): string =>
  value === undefined || value === null ? "" : typeof value === "object" ? JSON.stringify(value) : String(value);
