import type { Operation } from "./instance.ts";

/** Every operation that the given ones need, themselves included, in the order of the list of operations. */
export function closeOperations(operations: readonly Operation[], wanted: Iterable<string>): string[] {
  const byId = new Map(operations.map((o) => [o.id, o]));
  const reached = new Set<string>();
  const open = [...wanted];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (reached.has(id)) continue;
    reached.add(id);
    open.push(...(byId.get(id)?.needs ?? []));
  }
  return operations.filter((o) => reached.has(o.id)).map((o) => o.id);
}
