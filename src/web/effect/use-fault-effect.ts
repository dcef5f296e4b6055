import { useEffect, useRef, useState } from "react";
import type { FaultQuestion } from "#casework";
import type { Family } from "../car.ts";
import { createEffectClient, type EffectClient } from "./effect-client.ts";
import type { EffectAnswer } from "./effect-worker.ts";

export interface EffectState {
  /** The newest answer to this fault; it carries the condition it was computed for. */
  readonly answer: EffectAnswer | null;
  readonly busy: boolean;
  /** Set when the computation broke off by itself or was stopped. */
  readonly ended: "stopped" | "broken" | null;
  readonly stop: () => void;
}

interface Shown {
  readonly subject: string;
  readonly answer: EffectAnswer;
}

/** What is asked about, without the condition it is asked in. */
const subjectOf = (family: Family, question: FaultQuestion): string =>
  JSON.stringify([family.id, question.corner, question.position, question.fault]);

/**
 * What a fault does, computed in a worker; null asks nothing.
 * While a condition changes the answers come in the order they were asked; answers about another fault are dropped.
 */
export const useFaultEffect = (family: Family, question: FaultQuestion | null): EffectState => {
  const client = useRef<EffectClient | null>(null);
  const latest = useRef(0);
  const [shown, setShown] = useState<Shown | null>(null);
  const [busy, setBusy] = useState(false);
  const [ended, setEnded] = useState<EffectState["ended"]>(null);
  const subject = question === null ? null : subjectOf(family, question);

  useEffect(
    () => () => {
      client.current?.stop();
      client.current = null;
    },
    [],
  );

  useEffect(() => {
    const turn = ++latest.current;
    const last = () => turn === latest.current;
    setEnded(null);
    setBusy(question !== null);
    if (question === null) return;
    client.current ??= createEffectClient();
    client.current.ask({ family, question }).then(
      (answer) => {
        if (answer !== null) setShown({ subject: subjectOf(family, question), answer });
        if (answer !== null && last()) setBusy(false);
      },
      () => {
        if (!last()) return;
        setEnded("broken");
        setBusy(false);
      },
    );
  }, [family, question]);

  const stop = () => {
    client.current?.stop();
    setBusy(false);
    setEnded("stopped");
  };
  return { answer: shown !== null && shown.subject === subject ? shown.answer : null, busy, ended, stop };
};
