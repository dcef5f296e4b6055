import { formatChance, type PlannedRemedy, riskOver } from "#casework";
import type { DistanceRule } from "./distance-rule.ts";

const SAMPLES = 60;
/** Half the thickness of a bar that is certain to last, in units of the box. */
const HALF = 11.5;
const BOX = 24;

/** Outline of a bar as thick as it is likely that the part lasts, between two shares of the rule. */
const outline = (planned: PlannedRemedy, rule: DistanceRule, to: number): string => {
  const { remaining } = planned;
  if (remaining === null) return "";
  const spots = Array.from({ length: SAMPLES + 1 }, (_, i) => {
    const share = (i / SAMPLES) * to;
    const lasts = 1 - riskOver(remaining, share * (rule.toKm - rule.fromKm));
    return [1000 * share, HALF * lasts] as const;
  });
  const upper = spots.map(([x, half]) => `${x.toFixed(1)} ${(BOX / 2 - half).toFixed(2)}`);
  const lower = spots.toReversed().map(([x, half]) => `${x.toFixed(1)} ${(BOX / 2 + half).toFixed(2)}`);
  return `M${[...upper, ...lower].join("L")}Z`;
};

interface LifeBarProps {
  readonly planned: PlannedRemedy;
  readonly rule: DistanceRule;
  /** Odometer of each visit. */
  readonly visits: readonly number[];
}

/** What a bar says, for somebody who does not see it. */
const barWords = ({ riskTo, remaining }: PlannedRemedy): string =>
  remaining === null
    ? "no life on file"
    : `chance that it does not last to the end of the plan ${formatChance(riskTo.at(-1) ?? 0)}`;

/** How long a part lasts along the rule of distance, from a practice band: dashed, since nobody has counted. */
export const LifeBar = ({ planned, rule, visits }: LifeBarProps) => {
  const at = planned.visit === null ? null : (visits[planned.visit] ?? null);
  const half = planned.halfGoneKm === null ? null : rule.fromKm + planned.halfGoneKm;
  return (
    <span className="life-bar">
      <svg viewBox={`0 0 1000 ${BOX}`} preserveAspectRatio="none" role="img" aria-label={barWords(planned)}>
        {planned.remaining === null ? (
          <path d={`M0 ${BOX / 2}H1000`} className="life-none" />
        ) : (
          <>
            {at === null || at <= rule.fromKm ? null : (
              <path d={outline(planned, rule, rule.share(at))} className="life-used" />
            )}
            <path d={outline(planned, rule, 1)} className="life-outline" />
          </>
        )}
      </svg>
      {half === null || half > rule.toKm ? null : (
        <span className="life-half" style={{ left: `${100 * rule.share(half)}%` }} />
      )}
      {at === null ? null : (
        <span
          className="life-node"
          data-fixed={planned.fixed}
          style={{ left: `${100 * rule.share(at)}%` }}
          aria-hidden="true"
        />
      )}
    </span>
  );
};
