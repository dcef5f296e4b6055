/** Millimetres of a page unit: 96 to the inch. */
const MM_PER_UNIT = 25.4 / 96;

/** A scale as it stands in a title block: "1 : 10.5". */
export function scaleWords(unitsPerMetre: number): string {
  const ratio = 1000 / (unitsPerMetre * MM_PER_UNIT);
  return `1 : ${ratio < 20 ? ratio.toFixed(1) : ratio.toFixed(0)}`;
}
