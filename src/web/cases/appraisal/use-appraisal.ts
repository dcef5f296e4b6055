import { useEffect, useMemo, useRef, useState } from "react";
import { type Appraisal, ratesOf, recordOfVisit, type VisitRecord } from "#casework";
import type { Waiting } from "../../shell/waiting-line.tsx";
import { type Case, useCase } from "../case/case-context.tsx";
import { appraisals } from "./appraisal-client.ts";

/** The appraisal of the case that is open, kept up to date with its records. */
export interface AppraisedCase {
  readonly held: Case;
  readonly record: VisitRecord;
  /** The newest that has been computed; null before the first. While a newer one is computed the last stays. */
  readonly appraisal: Appraisal | null;
  readonly waiting: Waiting | null;
  /** Set when the computation was stopped or broke off by itself. */
  readonly ended: "stopped" | "broken" | null;
}

/** The last answer of this window, so that a page opened next begins with it. */
let last: { readonly visitId: string; readonly appraisal: Appraisal } | null = null;

/** The record of a visit as the appraisal takes it. */
const recordOf = (held: Case): VisitRecord =>
  recordOfVisit({
    family: held.family?.family ?? null,
    rates: ratesOf(held.settings),
    visit: held.visit,
    enquiry: held.enquiry,
    plan: held.plan,
    jobCard: held.jobCard,
    handOver: held.handOver,
    looks: held.looks,
    past: held.past,
  });

/** A page that is looked at for so long without a change is the moment to appraise ahead, ms. */
const LOOKED_AT = 2000;

/**
 * Appraises the open case ahead, while somebody reads or looks at a page that shows nothing of it, so that the page that
 * does begins with an answer. Nothing is said where that breaks off: the page that shows it asks again, and says so.
 */
export const useAppraisalAhead = (isWanted: boolean): void => {
  const held = useCase();
  const { visitId, family, familyComing, settings, visit, enquiry, plan, jobCard, handOver, looks, past } = held;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the record hangs on these parts of the case alone
  useEffect(() => {
    if (!isWanted || familyComing || family === null || looks.length === 0) return;
    const timer = setTimeout(() => {
      void appraisals.ask(recordOf(held)).then(
        (answer) => {
          if (answer !== null) last = { visitId, appraisal: answer };
        },
        () => undefined,
      );
    }, LOOKED_AT);
    return () => clearTimeout(timer);
  }, [isWanted, visitId, familyComing, family, settings, visit, enquiry, plan, jobCard, handOver, looks, past]);
};

/** Appraises the open case in a worker whenever something on record changes. */
export const useAppraisal = (): AppraisedCase => {
  const held = useCase();
  const { visitId, family, familyComing, settings, visit, enquiry, plan, jobCard, handOver, looks, past } = held;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the record hangs on these parts of the case alone
  const record = useMemo(
    () => recordOf(held),
    [family, settings, visit, enquiry, plan, jobCard, handOver, looks, past],
  );
  const [appraisal, setAppraisal] = useState(last?.visitId === visitId ? last.appraisal : null);
  const [busy, setBusy] = useState(true);
  const [ended, setEnded] = useState<AppraisedCase["ended"]>(null);
  const latest = useRef(0);
  useEffect(() => {
    if (familyComing) return;
    const turn = ++latest.current;
    setBusy(true);
    setEnded(null);
    appraisals.ask(record).then(
      (answer) => {
        if (answer !== null) {
          last = { visitId, appraisal: answer };
          setAppraisal(answer);
        }
        if (turn === latest.current) setBusy(false);
      },
      () => {
        if (turn !== latest.current) return;
        setEnded("broken");
        setBusy(false);
      },
    );
    return () => {
      latest.current++;
    };
  }, [record, visitId, familyComing]);
  const waiting = useMemo(
    () =>
      busy
        ? {
            doing: "Judging places, balancing corners, searching the plan of least cost",
            stop: () => {
              appraisals.stop();
              latest.current++;
              setBusy(false);
              setEnded("stopped");
            },
          }
        : null,
    [busy],
  );
  return { held, record, appraisal, waiting, ended };
};
