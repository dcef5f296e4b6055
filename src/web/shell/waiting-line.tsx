import { useEffect, useState } from "react";

export interface Waiting {
  /** What is being done, in plain words: "Computing 9 heights". */
  readonly doing: string;
  readonly stop?: () => void;
}

type Stage = "quiet" | "line" | "words";
const LINE_AFTER_MS = 100;
const WORDS_AFTER_MS = 1000;

/** Nothing for the first tenth of a second, then a line under the head, after a second what is being done and a way to stop. */
export const WaitingLine = ({ waiting }: { readonly waiting: Waiting | null }) => {
  const [stage, setStage] = useState<Stage>("quiet");
  const busy = waiting !== null;
  useEffect(() => {
    setStage("quiet");
    if (!busy) return;
    const line = setTimeout(() => setStage("line"), LINE_AFTER_MS);
    const words = setTimeout(() => setStage("words"), WORDS_AFTER_MS);
    return () => {
      clearTimeout(line);
      clearTimeout(words);
    };
  }, [busy]);
  return (
    <div className="waiting" data-busy={busy} data-stage={busy ? stage : "quiet"} role="status">
      {busy && stage === "words" ? (
        <p className="waiting-words">
          {waiting.doing}
          {waiting.stop === undefined ? null : (
            <button type="button" className="link" onClick={waiting.stop}>
              Stop
            </button>
          )}
        </p>
      ) : null}
    </div>
  );
};
