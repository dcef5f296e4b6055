/**
 * The cheapest way to give every row its own column (Hungarian method with potentials, from memory; O(rows^2 columns)).
 * @param cost cost[row][column]; at least as many columns as rows, all finite
 * @returns the column of each row
 */
export function solveAssignment(cost: readonly (readonly number[])[]): readonly number[] {
  const rows = cost.length;
  const columns = cost[0]?.length ?? 0;
  if (columns < rows) throw new RangeError(`${rows} rows need as many columns, got ${columns}`);
  const price = (row: number, column: number): number => cost[row]?.[column] ?? Number.POSITIVE_INFINITY;
  const rowPotential = new Float64Array(rows + 1);
  const columnPotential = new Float64Array(columns + 1);
  /** Row + 1 that holds a column; entry 0 is the row being placed. */
  const holder = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row++) {
    holder[0] = row;
    let column = 0;
    const least = new Float64Array(columns + 1).fill(Number.POSITIVE_INFINITY);
    const from = new Int32Array(columns + 1);
    const done = new Uint8Array(columns + 1);
    while ((holder[column] ?? 0) !== 0) {
      done[column] = 1;
      const current = holder[column] ?? 0;
      let step = Number.POSITIVE_INFINITY;
      let next = 0;
      for (let j = 1; j <= columns; j++) {
        if (done[j] === 1) continue;
        const reduced = price(current - 1, j - 1) - (rowPotential[current] ?? 0) - (columnPotential[j] ?? 0);
        if (reduced < (least[j] ?? 0)) {
          least[j] = reduced;
          from[j] = column;
        }
        if ((least[j] ?? 0) < step) {
          step = least[j] ?? 0;
          next = j;
        }
      }
      for (let j = 0; j <= columns; j++) {
        if (done[j] === 1) {
          const held = holder[j] ?? 0;
          rowPotential[held] = (rowPotential[held] ?? 0) + step;
          columnPotential[j] = (columnPotential[j] ?? 0) - step;
        } else least[j] = (least[j] ?? 0) - step;
      }
      column = next;
    }
    while (column !== 0) {
      const previous = from[column] ?? 0;
      holder[column] = holder[previous] ?? 0;
      column = previous;
    }
  }
  const columnOf = new Array<number>(rows).fill(-1);
  for (let j = 1; j <= columns; j++) {
    const row = (holder[j] ?? 0) - 1;
    if (row >= 0) columnOf[row] = j - 1;
  }
  return columnOf;
}
