import type { Finding } from "#numeric";
import { mmFromMetres } from "#quantity";
import type { CornerAssembly } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import type { MatchAsked } from "../match.ts";

/** So many different heights are needed for a corner to be called matched. */
export const LEAST_HEIGHTS = 3;
/** Heights nearer to each other than this are one, m (invented). */
const SAME_HEIGHT = 0.003;
/** A body is lifted or let down a little beyond the stops on file at most, m (invented). */
const BEYOND_STOP = 0.01;
const FURTHEST_ANGLE = 0.35;

/** Everything that keeps a corner from being matched; empty where nothing does. */
export function checkMatch({ readings, lengths }: MatchAsked, a: CornerAssembly): readonly Finding[] {
  const heights = readings
    .map(({ travel }) => travel)
    .sort((one, other) => one - other)
    .filter((travel, i, all) => i === 0 || travel - (all[i - 1] ?? 0) > SAME_HEIGHT);
  const findings: Finding[] = [];
  if (heights.length < LEAST_HEIGHTS)
    findings.push({
      code: "wrong-length",
      path: "readings",
      got: heights.length === 1 ? "one height" : `${heights.length} heights`,
      needed: `camber or toe at ${LEAST_HEIGHTS} heights or more, ${formatNumber(mmFromMetres(SAME_HEIGHT), 0)} mm apart at least`,
      hint: "Load or lift the body, let it settle, read again.",
    });
  const mm = (metres: number): string => `${formatNumber(mmFromMetres(metres), 0)} mm`;
  readings.forEach(({ travel, camber, toe }, i) => {
    if (travel > a.bumpStop + BEYOND_STOP || travel < -a.droopStop - BEYOND_STOP)
      findings.push({
        code: "out-of-range",
        path: `readings[${i}].travel`,
        got: mm(travel),
        needed: `${mm(-a.droopStop - BEYOND_STOP)} to ${mm(a.bumpStop + BEYOND_STOP)}, the stops on file`,
        hint: "The height is read from hub centre to arch: it gets less when the body sinks.",
      });
    for (const [key, angle] of [["camber", camber] as const, ["toe", toe] as const])
      if (angle !== null && Math.abs(angle) > FURTHEST_ANGLE)
        findings.push({
          code: "out-of-range",
          path: `readings[${i}].${key}`,
          got: `${formatNumber((angle * 180) / Math.PI, 2)}°`,
          needed: "an angle of a wheel, 20° at most",
          hint: "",
        });
  });
  lengths.forEach(({ link, length }, i) => {
    const known = a.links.find(({ name }) => name === link);
    const drawn = known ? Math.hypot(...known.inner.at.map((x, c) => x - (known.outer.at[c] as number))) : null;
    if (drawn === null)
      findings.push({
        code: "unknown-link",
        path: `lengths[${i}].link`,
        got: link,
        needed: a.links.map(({ name }) => name).join(", "),
        hint: "",
      });
    else if (!(length > drawn / 2 && length < drawn * 2))
      findings.push({
        code: "out-of-range",
        path: `lengths[${i}].length`,
        got: mm(length),
        needed: `a length near ${mm(drawn)}, that of its points`,
        hint: "From joint centre to joint centre.",
      });
  });
  return findings;
}
