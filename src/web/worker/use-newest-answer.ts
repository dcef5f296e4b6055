import { useEffect, useRef, useState } from "react";
import type { NewestQuestion } from "./newest-question.ts";

export interface NewestAnswer<Question, Answer> {
  readonly answer: Answer | null;
  /** The question the answer is of. */
  readonly asked: Question | null;
  readonly busy: boolean;
  readonly ended: "stopped" | "broken" | null;
  readonly stop: () => void;
}

/**
 * Puts a question to a worker; of questions that wait only the newest is asked, the last answer stays meanwhile. Keep the
 * question the same object while nothing in it changes; null asks nothing.
 */
export const useNewestAnswer = <Question, Answer>(
  create: () => NewestQuestion<Question, Answer>,
  question: Question | null,
): NewestAnswer<Question, Answer> => {
  const client = useRef<NewestQuestion<Question, Answer> | null>(null);
  const latest = useRef(0);
  const [shown, setShown] = useState<{ asked: Question; answer: Answer } | null>(null);
  const [busy, setBusy] = useState(question !== null);
  const [ended, setEnded] = useState<"stopped" | "broken" | null>(null);
  useEffect(
    () => () => {
      client.current?.stop();
      client.current = null;
    },
    [],
  );
  useEffect(() => {
    const turn = ++latest.current;
    setBusy(question !== null);
    setEnded(null);
    if (question === null) return;
    client.current ??= create();
    client.current.ask(question).then(
      (answer) => {
        if (answer !== null) setShown({ asked: question, answer });
        if (answer !== null && turn === latest.current) setBusy(false);
      },
      () => {
        if (turn !== latest.current) return;
        setEnded("broken");
        setBusy(false);
      },
    );
  }, [create, question]);
  const stop = () => {
    client.current?.stop();
    setBusy(false);
    setEnded("stopped");
  };
  return { answer: shown?.answer ?? null, asked: shown?.asked ?? null, busy, ended, stop };
};
