import { type CarSuspects, formatChance, NO_LOOK_TELLS_MUCH, tellingLooks } from "#casework";

const MOST_SHOWN = 4;

const STOP_WORDS = {
  settled: "Settled: the leading suspect is sure enough. No look is worth its minutes.",
  "nothing-left": "Everything that could be looked at has been.",
  "no-gain": "No single look would settle it or make the leading suspect surer.",
} as const;

/** The looks that would settle the complaint soonest, best first, with the minutes they take. */
export const NextLooks = ({ suspects }: { readonly suspects: CarSuspects }) => {
  const { next } = suspects;
  if (next === null) return null;
  const looks = tellingLooks(suspects).slice(0, MOST_SHOWN);
  const labelOf = (cause: string): string => suspects.suspects.find((s) => s.cause === cause)?.label ?? cause;
  const most = Math.max(0.01, ...looks.map((look) => look.settles));
  return (
    <section className="next-looks">
      <div className="next-head">
        <h2>Next best look</h2>
        {looks.length === 0 ? null : <span className="note">chance that it settles it</span>}
      </div>
      {next.stop === null && looks.length > 0 ? null : (
        <p className="label">{next.stop === null ? NO_LOOK_TELLS_MUCH : STOP_WORDS[next.stop]}</p>
      )}
      <ol>
        {looks.map((look, i) => (
          <li key={look.id} className="next-look" data-first={i === 0}>
            <span>Look for: {labelOf(look.id)}</span>
            <span className="label">{look.minutes} min</span>
            <span className="suspect-bar" aria-hidden="true">
              <span style={{ width: `${(100 * look.settles) / most}%` }} />
            </span>
            <span className="note">{formatChance(look.settles)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
};
