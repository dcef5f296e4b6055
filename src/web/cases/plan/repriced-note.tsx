import { useEffect, useRef, useState } from "react";
import { type Appraisal, formatMoney, movedWithWords } from "#casework";
import { findTurn, isStillSo, type Repriced, type Turn } from "./repriced.ts";

/** The last change by a word or by hand, for as long as what it says of the prices is still so. */
const useLastTurn = ({ plan, planDocument }: Appraisal): Turn | null => {
  const last = useRef({ plan, planDocument });
  const [turn, setTurn] = useState<Turn | null>(null);
  useEffect(() => {
    const fresh = findTurn(last.current, { plan, planDocument });
    last.current = { plan, planDocument };
    if (fresh !== null) setTurn(fresh);
  }, [plan, planDocument]);
  return turn !== null && isStillSo(turn, plan) ? turn : null;
};

const moneyWords = (cents: number | null, currency: string): string =>
  cents === null ? "no price of its own" : formatMoney(cents, currency);

const lineWords = ({ label, before, after, movedTo }: Repriced, currency: string): string =>
  [
    before === after
      ? `${label} still ${moneyWords(after, currency)}`
      : `${label} now ${moneyWords(after, currency)}, was ${moneyWords(before, currency)}`,
    movedTo === null ? null : `moved: ${movedTo}`,
  ]
    .filter((part) => part !== null)
    .join("; ");

/** Says what declining a remedy, or setting one by hand, has done to the others; what moved with it for as long as it is so. */
export const RepricedNote = ({ appraisal, currency }: { readonly appraisal: Appraisal; readonly currency: string }) => {
  const turn = useLastTurn(appraisal);
  const moved = movedWithWords(appraisal.plan);
  return (
    <div role="status" className="plan-repriced">
      {turn === null ? null : (
        <>
          <p>
            <strong>{turn.words}</strong>{" "}
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
      {moved === "" ? null : (
        <p>
          <strong>By what is set by hand, other work stands elsewhere.</strong> {moved} Set it by hand too where it must
          not wait.
        </p>
      )}
    </div>
  );
};
