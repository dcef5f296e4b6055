/** Orthonormal directions of the `size` moves that no row blocks, by Gram-Schmidt. */
export function findFreeMoves(rows: readonly (readonly number[])[], size: number): number[][] {
  const basis: number[][] = [];
  const reduce = (v: readonly number[]): number[] => {
    const out = [...v];
    for (let pass = 0; pass < 2; pass++)
      for (const b of basis) {
        const d = b.reduce((s, x, i) => s + x * (out[i] as number), 0);
        for (let i = 0; i < size; i++) out[i] = (out[i] as number) - d * (b[i] as number);
      }
    return out;
  };
  const push = (v: readonly number[]): boolean => {
    const r = reduce(v);
    const length = Math.hypot(...r);
    if (length < 1e-9 * Math.max(1, Math.hypot(...v))) return false;
    basis.push(r.map((x) => x / length));
    return true;
  };
  for (const row of rows) push(row);
  const blocked = basis.length;
  for (let i = 0; i < size && basis.length < size; i++) push(Array.from({ length: size }, (_, j) => (i === j ? 1 : 0)));
  return basis.slice(blocked);
}
