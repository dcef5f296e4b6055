import { useEffect, useRef, useState } from "react";
import { type Appraisal, formatMoney, type VisitPlan } from "#casework";
import { compareRepriced, type Repriced } from "./repriced.ts";

interface Turn {
  /** What the owner declined, and what was taken in again, by name. */
  readonly declined: readonly string[];
  readonly takenIn: readonly string[];
  readonly repriced: readonly Repriced[];
}

const names = (plan: VisitPlan, ids: readonly string[]): readonly string[] =>
  ids.map((id) => plan.remedies.find(({ remedy }) => remedy.id === id)?.remedy.label ?? id);

/** Compares each appraisal with the one before wherever the owner has declined something or taken it in again. */
const useLastTurn = ({ plan, planDocument }: Appraisal): Turn | null => {
  const last = useRef({ plan, planDocument });
  const [turn, setTurn] = useState<Turn | null>(null);
  useEffect(() => {
    const before = last.current;
    last.current = { plan, planDocument };
    const was = before.planDocument.declined;
    const is = planDocument.declined;
    const declined = is.filter((id) => !was.includes(id));
    const takenIn = was.filter((id) => !is.includes(id));
    if (declined.length + takenIn.length === 0) return;
    setTurn({
      declined: names(plan, declined),
      takenIn: names(plan, takenIn),
      repriced: compareRepriced(before.plan, plan, [...declined, ...takenIn]),
    });
  }, [plan, planDocument]);
  return turn;
};

const moneyWords = (cents: number | null, currency: string): string =>
  cents === null ? "no price" : formatMoney(cents, currency);

const lineWords = ({ label, before, after, movedTo }: Repriced, currency: string): string =>
  [
    `${label} now ${moneyWords(after, currency)}, was ${moneyWords(before, currency)}`,
    movedTo === null ? null : `moved: ${movedTo}`,
  ]
    .filter((part) => part !== null)
    .join("; ");

/** Says what declining a remedy, or taking it in again, has done to the prices of the others. */
export const RepricedNote = ({ appraisal, currency }: { readonly appraisal: Appraisal; readonly currency: string }) => {
  const turn = useLastTurn(appraisal);
  return (
    <div role="status" className="plan-repriced">
      {turn === null ? null : (
        <>
          <p>
            <strong>
              {turn.declined.length > 0
                ? `Declined: ${turn.declined.join("; ")}.`
                : `Taken in again: ${turn.takenIn.join("; ")}.`}
            </strong>{" "}
            {turn.repriced.length === 0
              ? "No other price hangs on it: nothing of it was shared."
              : "What is left was priced again:"}
          </p>
          {turn.repriced.map((one) => (
            <p key={one.id} className="label">
              {lineWords(one, currency)}
            </p>
          ))}
        </>
      )}
    </div>
  );
};
