import { useMemo } from "react";
import type { FaultQuestion } from "#casework";
import { type EffectState, useFaultEffect } from "../effect/use-fault-effect.ts";
import { questionAt } from "../effect/usual-condition.ts";
import type { Waiting } from "../shell/waiting-line.tsx";
import { faultOfMark } from "./position-mark.ts";
import type { Underside } from "./use-underside.ts";

interface MarkedEffect {
  readonly question: FaultQuestion | null;
  readonly effect: EffectState;
  readonly waiting: Waiting | null;
}

/** What the mark at the selected position does under the condition of the address. */
export const useMarkedEffect = ({ loaded, marks, selected, condition }: Underside): MarkedEffect => {
  const question = useMemo(
    () => questionAt(selected, faultOfMark(selected === null ? null : (marks.get(selected.id) ?? null)), condition),
    [marks, selected, condition],
  );
  const effect = useFaultEffect(loaded.family, question);
  const waiting = effect.busy
    ? { doing: "Balancing the corner with and without what is marked", stop: effect.stop }
    : null;
  return { question, effect, waiting };
};
