/** What a number may be, which decides between two readings of what was typed. */
export interface NumberBounds {
  readonly low?: number;
  readonly high?: number;
  /** True where only whole numbers make sense. */
  readonly whole?: boolean;
}

/** What a person typed, read as a number. */
export type TypedNumber =
  | { readonly kind: "empty" }
  | { readonly kind: "number"; readonly value: number }
  /** Two numbers are written so, and nothing tells which is meant. */
  | { readonly kind: "unclear"; readonly readings: readonly [grouped: number, decimal: number] }
  | { readonly kind: "no-number" };

/** Every stroke that is written for a minus: hyphens, figure dash, en dash, minus sign. */
const MINUS = /^[-‐‑‒–−﹣－]\s*/;
const DECIMAL_SIGNS = ["", ".", ","] as const;
const GROUP_SIGNS = ["", " ", "'", ",", "."] as const;

const escaped = (sign: string): string => (sign === "." ? "\\." : sign);

/** The pattern of a number with these signs: thousands in threes, and a first group that is not led by 0. */
const patternOf = (group: string, decimal: string): RegExp => {
  const grouped = group === "" ? "\\d+" : `[1-9]\\d{0,2}(?:${escaped(group)}\\d{3})+`;
  if (decimal === "") return new RegExp(`^(${grouped})$`);
  const point = escaped(decimal);
  return group === ""
    ? new RegExp(`^(\\d+)${point}(\\d*)$|^()${point}(\\d+)$`)
    : new RegExp(`^(${grouped})${point}(\\d+)$`);
};

const FORMS = GROUP_SIGNS.flatMap((group) =>
  DECIMAL_SIGNS.filter((decimal) => decimal !== group || decimal === "").map((decimal) => ({
    group,
    pattern: patternOf(group, decimal),
  })),
);

/** Every number that is written so, by whether its thousands are set off. */
const readingsOf = (plain: string): { readonly grouped: readonly number[]; readonly flat: readonly number[] } => {
  const grouped: number[] = [];
  const flat: number[] = [];
  for (const { group, pattern } of FORMS) {
    const match = pattern.exec(plain);
    if (match === null) continue;
    const [whole = "", decimals = ""] = match.slice(1).filter((part) => part !== undefined);
    const value = Number(`${group === "" ? whole || "0" : whole.replaceAll(group, "")}.${decimals || "0"}`);
    (group === "" ? flat : grouped).push(value);
  }
  return { grouped, flat };
};

const fits = (value: number, { low, high, whole }: NumberBounds): boolean =>
  value >= (low ?? Number.NEGATIVE_INFINITY) &&
  value <= (high ?? Number.POSITIVE_INFINITY) &&
  (whole !== true || Number.isInteger(value));

/**
 * Reads a number as people write it: "−30", "2,5", "2 510", "2.510,5", "1'080".
 * @param bounds decide where one mark may set off thousands or decimals ("2,510"); where they do not, a point is decimal,
 *   as this program writes it, and a comma is unclear. They refuse nothing by themselves but what is not whole.
 */
export const parseTypedNumber = (text: string, bounds: NumberBounds = {}): TypedNumber => {
  const trimmed = text.trim();
  if (trimmed === "") return { kind: "empty" };
  const sign = MINUS.test(trimmed) ? -1 : 1;
  const plain = trimmed
    .replace(MINUS, "")
    .replace(/^\+\s*/, "")
    .replace(/\s/g, " ")
    .replaceAll("’", "'");
  const { grouped, flat } = readingsOf(plain);
  const signed = [...grouped, ...flat].map((value) => (value === 0 ? 0 : sign * value));
  const possible = bounds.whole === true ? signed.filter(Number.isInteger) : signed;
  const [first, second] = possible;
  if (first === undefined) return { kind: "no-number" };
  if (second === undefined) return { kind: "number", value: first };
  const [one, ...others] = possible.filter((value) => fits(value, bounds));
  if (one !== undefined && others.length === 0) return { kind: "number", value: one };
  return plain.includes(".") ? { kind: "number", value: second } : { kind: "unclear", readings: [first, second] };
};

/** What keeps a text from being one number, in plain words, with the unit it is entered in; null where nothing does. */
export const typedNumberTrouble = (text: string, bounds: NumberBounds, unit: string): string | null => {
  const read = parseTypedNumber(text, bounds);
  const kind = bounds.whole === true ? "a whole number" : "a number";
  const inUnit = unit === "" ? "" : `, in ${unit}`;
  switch (read.kind) {
    case "empty":
    case "number":
      return null;
    case "unclear": {
      const [grouped, decimal] = read.readings;
      return `may mean ${grouped} or ${decimal}${unit === "" ? "" : ` ${unit}`}; write the one that is meant, with a point before decimals`;
    }
    case "no-number":
      return `give ${kind}${inUnit}`;
  }
};
