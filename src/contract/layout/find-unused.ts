import type { Finding } from "#numeric";
import type { LayoutSheet } from "./layout-schema.ts";

/**
 * What is doubtful in a layout that can be read, path by path: points nothing uses, and parts people would call the same. It is
 * said and computed all the same.
 */
export function findUnused(sheet: LayoutSheet, path: string): Finding[] {
  const at = (where: string): string => (path === "" ? where : `${path}.${where}`);
  const used = new Set(pointNamesOf(sheet));
  const unused = sheet.points.flatMap(({ name }, i): Finding[] =>
    used.has(name)
      ? []
      : [
          {
            code: "not-used",
            path: at(`points[${i}]`),
            got: JSON.stringify(name),
            needed: "a point that a joint, a link, the spring or the damper names",
            hint: "Nothing uses this point: leave it out, or name it where it was meant.",
          },
        ],
  );
  return [...unused, ...callsTwice(sheet, at)];
}

function pointNamesOf({ joints, links, spring, damper }: LayoutSheet): readonly string[] {
  const struts = [...links, ...(spring ? [spring] : []), ...(damper ? [damper] : [])];
  return [
    ...struts.flatMap(({ from, to }) => [from.at, to.at]),
    ...joints.flatMap((joint) =>
      joint.kind === "slider"
        ? [joint.line.from, joint.line.to, joint.through.at]
        : [joint.at, ...(joint.kind === "bush" ? (joint.axis_through ?? []) : [])],
    ),
  ];
}

/** Labels that stand at two parts: pages and paper could not tell them apart. */
function callsTwice({ joints, links }: LayoutSheet, at: (where: string) => string): Finding[] {
  const first = new Map<string, string>();
  const parts = [
    ...joints.map(({ name, label }, i) => ({ name, label, path: at(`joints[${i}].label`) })),
    ...links.map(({ name, label }, i) => ({ name, label, path: at(`links[${i}].label`) })),
  ];
  return parts.flatMap(({ name, label, path }): Finding[] => {
    if (label === undefined) return [];
    const before = first.get(label);
    if (before === undefined) {
      first.set(label, name);
      return [];
    }
    return [
      {
        code: "repeated-name",
        path,
        got: JSON.stringify(label),
        needed: "a label of its own",
        hint: `${before} is called so already: pages and paper cannot tell it from ${name}.`,
      },
    ];
  });
}
