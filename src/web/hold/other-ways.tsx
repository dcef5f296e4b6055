import { formatBand, formatFigure } from "#casework";
import { MarginSection } from "../shell/margin-section.tsx";
import { HAND_WAY_WORDS } from "./hand-way-words.ts";
import { HAND_WAYS, type HandWayName } from "./hold-search.ts";
import type { HandAnswer } from "./hold-worker.ts";

interface OtherWaysProps {
  /** Answers in the order of HAND_WAYS; null while they are computed. */
  readonly ways: readonly HandAnswer[] | null;
  readonly onChoose: (way: HandWayName) => void;
}

/** Where the chosen way of the hand does not tell a fault from sound: which one does, the corner held the same. */
export const OtherWays = ({ ways, onChoose }: OtherWaysProps) => {
  if (ways === null) return <p className="note">The other ways of the hand are being looked at.</p>;
  const telling = HAND_WAYS.flatMap((name, i) => {
    const answer = ways[i];
    return answer !== undefined && "test" in answer && answer.test.tells === "yes"
      ? [{ name, headline: answer.test.headline }]
      : [];
  });
  return (
    <MarginSection title="Held the same, what tells it">
      {telling.length === 0 ? (
        "No way of the hand tells it held so: choose another hold."
      ) : (
        <ul className="telling-ways">
          {telling.map(({ name, headline }) => (
            <li key={name}>
              <button type="button" className="link" onClick={() => onChoose(name)}>
                {HAND_WAY_WORDS[name]}
              </button>
              <span className="note">
                {formatFigure(headline)} further, {formatBand(headline)}
              </span>
            </li>
          ))}
        </ul>
      )}
    </MarginSection>
  );
};
