import { useEffect, useMemo, useRef, useState } from "react";
import type { ShakeQuestion } from "#casework";
import { metresFromMm, metresPerSecondFromKmPerHour } from "#quantity";
import { cornerOf, type Family, type Position } from "../car.ts";
import type { Waiting } from "../shell/waiting-line.tsx";
import type { PartFault } from "../underside/position-mark.ts";
import { createShakeClient, type ShakeClient } from "./shake-client.ts";
import type { ShakeAnswer } from "./shake-worker.ts";
import type { ShakeSetting } from "./use-shake-setting.ts";

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

/** Another disc or speed is told at once, so that what is shown stays until then. */
const isSameBush = (shown: Shown, family: Family, question: ShakeQuestion | null): boolean =>
  shown.family === family && question !== null && shown.question.position === question.position;

/** The question a place without its fluid asks; null where it is not that. */
export const shakeQuestionAt = (
  position: Position | null,
  fault: PartFault | null,
  setting?: ShakeSetting,
): ShakeQuestion | null => {
  const corner = position === null ? null : cornerOf(position);
  return position === null || corner === null || fault?.kind !== "fluid-gone"
    ? null
    : {
        corner,
        position: position.id,
        ...(setting === undefined ? {} : { variation: metresFromMm(setting.variation) }),
        ...(setting === undefined || setting.felt === null
          ? {}
          : { speed: metresPerSecondFromKmPerHour(setting.felt) }),
      };
};

/**
 * How the wheel shakes once the fluid of a bush is gone, computed in a worker; asks nothing where the fault is another.
 * @param setting the disc and the speed it is felt at; absent: the most a new disc may have, and nobody said a speed
 */
export const useShake = (
  family: Family,
  position: Position | null,
  fault: PartFault | null,
  setting?: ShakeSetting,
): ShakeState => {
  const client = useRef<ShakeClient | null>(null);
  const question = useMemo(() => shakeQuestionAt(position, fault, setting), [position, fault, setting]);
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
    answer: shown !== null && isSameBush(shown, family, question) ? shown.answer : null,
    ended: state === "stopped" || state === "broken" ? state : null,
    waiting: state === "busy" ? { doing: "Drawing the bush, the corner and the brake as they may be", stop } : null,
  };
};
