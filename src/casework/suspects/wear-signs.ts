import type { AxleName } from "#vehicle";
import type { PlaceFinding } from "../cases/place-finding.ts";
import { type WearPattern, wearWords } from "../cases/wear-pattern.ts";
import { symptoms } from "./symptom-table.ts";

/** A way a tyre of an axle has worn, as a sign of what wears it so. */
export interface WearSign {
  readonly id: string;
  readonly leak: number;
  /** By cause. */
  readonly strengths: ReadonlyMap<string, number>;
  readonly pattern: WearPattern;
  /** The tyres that show it. */
  readonly tyres: readonly PlaceFinding[];
}

/** Chance that the commonest cause of a pattern shows it on a tyre that is read, and that none of the table does (from memory). */
const STRONGEST = 0.8;
const LEAK = 0.1;

const PATTERNS: readonly WearPattern[] = ["inner-edge", "outer-edge", "centre", "both-shoulders", "feathered"];
const AXLES: readonly AxleName[] = ["front", "rear"];

/** The complaint of the table that tells how often each cause is behind a pattern; an outer edge has those of the inner. */
const complaintOf = (pattern: WearPattern, axle: AxleName): string => {
  if (pattern === "feathered") return "feathered-saw-edge-tread";
  if (pattern === "centre" || pattern === "both-shoulders") return "centre-or-both-shoulder-wear";
  return `${axle}-tyres-worn-on-inner-edge`;
};

/** Causes that wear an edge only where the angle lies to that side, and the angles that tell. */
const BY_DIRECTION: Readonly<Record<string, readonly string[]>> = {
  "front-toe-out-of-setting": ["toe", "total-toe"],
  "rear-toe-thrust-angle": ["toe", "total-toe"],
  "front-camber-or-cross-camber": ["camber"],
  "rear-camber-excessive": ["camber"],
};

/** True where an angle was read beyond its limit to the side that wears the other edge: toe in or positive camber for the inner. */
function isContradicted(
  cause: string,
  pattern: WearPattern,
  axle: AxleName,
  findings: readonly PlaceFinding[],
): boolean {
  const about = BY_DIRECTION[cause];
  if (about === undefined || (pattern !== "inner-edge" && pattern !== "outer-edge")) return false;
  const other = pattern === "inner-edge" ? "more" : "less";
  const own = pattern === "inner-edge" ? "less" : "more";
  const beyond = findings
    .filter((f) => f.axle === axle && f.kind === "alignment")
    .flatMap((f) =>
      f.reasons.filter(
        (r) =>
          about.some((name) => name === r.about) &&
          r.judgement?.against === "limit" &&
          r.judgement.decision === "beyond",
      ),
    );
  return beyond.some((r) => r.towards === other) && !beyond.some((r) => r.towards === own);
}

/**
 * What the wear across the tyres says of the causes behind a complaint, one sign per pattern and axle. A pattern that is
 * itself the complaint is left out, so that it does not count twice.
 * @param complaints ids of the complaints that were taken up
 * @param known ids of the causes behind them
 */
export function findWearSigns(
  complaints: readonly string[],
  known: readonly string[],
  findings: readonly PlaceFinding[],
): readonly WearSign[] {
  return AXLES.flatMap((axle) =>
    PATTERNS.flatMap((pattern): WearSign[] => {
      const tyres = findings.filter((f) => f.axle === axle && f.wear === pattern);
      const complaint = complaintOf(pattern, axle);
      if (tyres.length === 0 || complaints.includes(complaint)) return [];
      const shares = symptoms.find(({ id }) => id === complaint)?.causes ?? [];
      const most = Math.max(...shares.map(([, share]) => share));
      const strengths = new Map(
        shares.flatMap(([cause, share]) =>
          known.includes(cause) && !isOfOtherAxle(cause, axle) && !isContradicted(cause, pattern, axle, findings)
            ? [[cause, (STRONGEST * share) / most] as const]
            : [],
        ),
      );
      return strengths.size === 0 ? [] : [{ id: `wear:${axle}-${pattern}`, leak: LEAK, strengths, pattern, tyres }];
    }),
  );
}

/** Which tyres show which wear: "front left, front right: inner-edge wear". */
export const wearSignWords = ({ tyres, pattern }: WearSign): string =>
  `Tyre, ${tyres.map(({ axle, side }) => (side === null ? `${axle}` : `${axle} ${side}`)).join(", ")}: ${wearWords[pattern]}`;

/** Feathering is one complaint for both axles: a toe of the other axle does not feather this one. */
const isOfOtherAxle = (cause: string, axle: AxleName): boolean =>
  cause.startsWith(axle === "front" ? "rear-" : "front-");
