import type { Finding } from "#numeric";
import { STRUT_TOP, TRAILING_ARM } from "#vehicle";
import { findNearest } from "../edit-distance.ts";
import { familyFinding } from "./family-finding.ts";
import type { LooseAxle } from "./loose-axle.ts";

/** Names of links, and the links springs and dampers sit on. */
export function checkNames(axle: LooseAxle): Finding[] {
  return [...linkNames(axle), ...seats(axle)];
}

function linkNames(axle: LooseAxle): Finding[] {
  const found: Finding[] = [];
  const first = new Map<string, number>();
  axle.links.forEach(({ name, arm }, index) => {
    const path = `${axle.name}.links[${index}].name`;
    if (name === undefined) return;
    if (name === STRUT_TOP || name === TRAILING_ARM) {
      found.push(
        familyFinding(
          "reserved-link-name",
          path,
          name,
          `a name other than ${STRUT_TOP} and ${TRAILING_ARM}`,
          "The program calls the mounts of struts and trailing arms so.",
        ),
      );
    }
    const before = first.get(name);
    if (before !== undefined) {
      found.push(
        familyFinding(
          "duplicate-link-name",
          path,
          name,
          `a name of its own; links[${before}] has this one`,
          "Seats and positions find links by their names.",
        ),
      );
    } else first.set(name, index);
    if (axle.links.some((other) => other.arm === name && other.arm !== arm)) {
      found.push(
        familyFinding(
          "duplicate-link-name",
          path,
          name,
          "a name no arm of this axle has",
          "Positions find arms and links by their names.",
        ),
      );
    }
  });
  return found;
}

function seats(axle: LooseAxle): Finding[] {
  const names = axle.links.flatMap(({ name }) => (name === undefined ? [] : [name]));
  return (["spring", "damper"] as const).flatMap((part) => {
    const { seat } = axle[part];
    const path = `${axle.name}.${part}.seat`;
    if (!seat || seat.on === "knuckle" || names.length === 0) return [];
    if (seat.on === "link") return names.includes(seat.link) ? [] : [unknownLink(`${path}.link`, seat.link, names)];
    const unknown = seat.links.flatMap((name, index) =>
      names.includes(name) ? [] : [unknownLink(`${path}.links[${index}]`, name, names)],
    );
    if (unknown.length > 0) return unknown;
    const arms = seat.links.map((name) => axle.links.find((link) => link.name === name)?.arm);
    return arms[0] !== undefined && arms[0] === arms[1] && seat.links[0] !== seat.links[1]
      ? []
      : [
          familyFinding(
            "seat-not-on-one-arm",
            `${path}.links`,
            seat.links.join(" and "),
            "two links with the same arm",
            "Only the two legs of one rigid arm carry a seat between them.",
          ),
        ];
  });
}

function unknownLink(path: string, name: string, names: readonly string[]): Finding {
  const nearest = findNearest(name, names);
  return familyFinding(
    "seat-on-unknown-link",
    path,
    name,
    `one of the links of this axle: ${names.join(", ")}`,
    nearest === null ? "" : `The nearest is ${nearest}.`,
  );
}
