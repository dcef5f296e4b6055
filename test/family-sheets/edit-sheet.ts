import { readFileSync } from "node:fs";

/** A change to a sheet, as a person would slip: what stands at a path is replaced, copied from elsewhere, removed or added to. */
export type Edit =
  | { readonly set: string; readonly to: unknown }
  | { readonly set: string; readonly copyOf: string }
  | { readonly remove: string }
  | { readonly append: string; readonly entry: unknown };

type Container = Record<string, unknown> & unknown[];

const steps = (path: string): (string | number)[] =>
  [...path.matchAll(/([a-z_]+)|\[(\d+)\]/g)].map(([, key, index]) => key ?? Number(index));

const isContainer = (value: unknown): value is Container => typeof value === "object" && value !== null;

/** The list or object a path ends in, and the last step of the path. */
function holderOf(sheet: unknown, path: string): { readonly holder: Container; readonly last: string | number } {
  const way = steps(path);
  const last = way.pop();
  let holder: unknown = sheet;
  for (const step of way) holder = isContainer(holder) ? holder[step as number] : undefined;
  if (!isContainer(holder) || last === undefined) throw new Error(`nothing stands at ${path}`);
  return { holder, last };
}

/** What stands at a path of a sheet. */
export function valueIn(sheet: unknown, path: string): unknown {
  const { holder, last } = holderOf(sheet, path);
  return holder[last as number];
}

/** A copy of the sheet with the changes made in their order. */
export function editSheet(sheet: unknown, edits: readonly Edit[]): unknown {
  const copy: unknown = structuredClone(sheet);
  for (const edit of edits) {
    if ("append" in edit) {
      const list = valueIn(copy, edit.append);
      if (!Array.isArray(list)) throw new Error(`no list stands at ${edit.append}`);
      list.push(edit.entry);
      continue;
    }
    const { holder, last } = holderOf(copy, "remove" in edit ? edit.remove : edit.set);
    if (!("remove" in edit)) {
      holder[last as number] = structuredClone("copyOf" in edit ? valueIn(copy, edit.copyOf) : edit.to);
    } else if (Array.isArray(holder)) (holder as unknown[]).splice(Number(last), 1);
    else delete (holder as Record<string, unknown>)[last as string];
  }
  return copy;
}

/** The text of a demo family's file. */
export function demoSheetText(name: "siskin-coupe" | "dunlin-hatch" | "ouzel-saloon"): string {
  return readFileSync(new URL(`../../src/demo/families/${name}.json`, import.meta.url), "utf8");
}
