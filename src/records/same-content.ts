/**
 * Figures that differ by less than this share are one figure: a length that went out in millimetres and came back
 * may differ by a few units in the last place. Far below any instrument (invented bound).
 */
const relativeSlack = 1e-12;

const isSameNumber = (one: number, other: number): boolean =>
  Math.abs(one - other) <= relativeSlack * Math.max(Math.abs(one), Math.abs(other));

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** True where two values of plain data say the same; the order of keys does not count, that of lists does. */
export const isSameContent = (one: unknown, other: unknown): boolean => {
  if (typeof one === "number" && typeof other === "number") return isSameNumber(one, other);
  if (Array.isArray(one) && Array.isArray(other)) {
    return one.length === other.length && one.every((value, index) => isSameContent(value, other[index]));
  }
  if (isObject(one) && isObject(other)) {
    const keys = Object.keys(one);
    return (
      keys.length === Object.keys(other).length &&
      keys.every((key) => Object.hasOwn(other, key) && isSameContent(one[key], other[key]))
    );
  }
  return one === other;
};
