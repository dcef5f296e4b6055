import { useEffect, useMemo, useRef, useState } from "react";
import type { ShakeQuestion } from "#casework";
import { metresFromMm } from "#quantity";
import { cornerOf, type Family, type Position } from "../car.ts";
import type { Waiting } from "../shell/waiting-line.tsx";
import type { PartFault } from "../underside/position-mark.ts";
import { createShakeClient, type ShakeClient } from "./shake-client.ts";
import type { ShakeAnswer } from "./shake-worker.ts";

export interface ShakeState {
  readonly answer: ShakeAnswer | null;
  /** Set when the computation broke off by itself or was stopped. */
  readonly ended: "stopped" | "broken" | null;
  /** Said while it is being computed, with a way to stop. */
  readonly waiting: Waiting | null;
}

interface Shown {
  readonly question: ShakeQuestion;
  readonly family: Family;
  readonly answer: ShakeAnswer;
}

/** The question a place without its fluid asks; null where it is not that. */
export const shakeQuestionAt = (
  position: Position | null,
  fault: PartFault | null,
  variation?: number,
): ShakeQuestion | null => {
  const corner = position === null ? null : cornerOf(position);
  return position === null || corner === null || fault?.kind !== "fluid-gone"
    ? null
    : { corner, position: position.id, ...(variation === undefined ? {} : { variation: metresFromMm(variation) }) };
};

/**
 * How the wheel shakes once the fluid of a bush is gone, computed in a worker; asks nothing where the fault is another.
 * @param variation thickness variation of the disc, mm; absent: the most a new one may have
 */
export const useShake = (
  family: Family,
  position: Position | null,
  fault: PartFault | null,
  variation?: number,
): ShakeState => {
  const client = useRef<ShakeClient | null>(null);
  const question = useMemo(() => shakeQuestionAt(position, fault, variation), [position, fault, variation]);
  const [shown, setShown] = useState<Shown | null>(null);
  const [state, setState] = useState<"idle" | "busy" | "stopped" | "broken">("idle");

  useEffect(
    () => () => {
      client.current?.stop();
      client.current = null;
    },
    [],
  );

  useEffect(() => {
    let last = true;
    setState(question === null ? "idle" : "busy");
    if (question === null) return;
    client.current ??= createShakeClient();
    client.current.ask({ family, question }).then(
      (answer) => {
        if (!last || answer === null) return;
        setShown({ family, question, answer });
        setState("idle");
      },
      () => {
        if (last) setState("broken");
      },
    );
    return () => {
      last = false;
    };
  }, [family, question]);

  const stop = () => {
    client.current?.stop();
    setState("stopped");
  };
  return {
    answer: shown !== null && shown.question === question && shown.family === family ? shown.answer : null,
    ended: state === "stopped" || state === "broken" ? state : null,
    waiting: state === "busy" ? { doing: "Drawing the bush, the corner and the brake as they may be", stop } : null,
  };
};
