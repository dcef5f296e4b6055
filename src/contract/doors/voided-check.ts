import type { Finding } from "#numeric";
import { entriesOf, isObject, type Loose, pointOf } from "./loose-corner.ts";

const has = (entry: Loose, key: string): boolean => entry[key] !== undefined;

const unused = (path: string, got: unknown, hint: string): Finding => ({
  code: "key-not-used-here",
  path,
  got: JSON.stringify(got),
  needed: "nothing here",
  hint,
});

/** Voids and rates against turning of one entry of rubber: each with all it needs, and only where it means something. */
export function checkVoided(entry: Loose, where: string, geometry: Loose): Finding[] {
  const findings: Finding[] = [];
  const [voided, clocked] = [has(entry, "voided_n_per_mm"), has(entry, "clocking_deg")];
  if (voided !== clocked)
    findings.push({
      code: "missing-key",
      path: `${where}.${voided ? "clocking_deg" : "voided_n_per_mm"}`,
      got: "nothing",
      needed: "voided_n_per_mm and clocking_deg together, or neither",
      hint: "A rate through voids holds in one direction across the axis; the angle says in which.",
    });
  const turning = ["conical_nm_per_deg", "torsional_nm_per_deg"].filter((key) => has(entry, key));
  const given = [...(voided ? ["voided_n_per_mm"] : []), ...turning];
  if (given.length === 0) return findings;
  if (entry.link === "strut_top") {
    if (has(entry, "torsional_nm_per_deg"))
      findings.push(
        unused(
          `${where}.torsional_nm_per_deg`,
          entry.torsional_nm_per_deg,
          "The rod of a strut turns freely about its line.",
        ),
      );
    return findings;
  }
  if (!has(entry, "axis"))
    findings.push({
      code: "missing-key",
      path: `${where}.axis`,
      got: "nothing",
      needed: `the axis of the bush, as ${given.join(" and ")} ${given.length > 1 ? "are" : "is"} given`,
      hint: "A ball joint has no axis: it is equally stiff in every direction and resists no turn.",
    });
  if (entry.end === "outer" && isArmLeg(entry.link, geometry))
    for (const key of turning)
      findings.push(
        unused(
          `${where}.${key}`,
          entry[key],
          "Several links meet in this joint and make one arm: it is a ball, about which nothing resists.",
        ),
      );
  return findings;
}

/** Whether another link ends where this one does. */
function isArmLeg(name: unknown, geometry: Loose): boolean {
  const links = entriesOf(geometry.links).map(([, link]) => link);
  const outer = pointOf(links.find((l) => isObject(l) && l.name === name)?.outer_mm);
  return outer !== null && links.filter((l) => pointOf(l.outer_mm)?.join() === outer.join()).length > 1;
}
