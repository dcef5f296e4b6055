import { wrap } from "comlink";
import { useEffect, useRef, useState } from "react";
import type { TravelSheetQuestion } from "#casework";
import { askNewestOnly, type NewestQuestion } from "../worker/newest-question.ts";
import type { TravelAnswer, TravelWorker } from "./travel-worker.ts";

export interface TravelSheetState {
  readonly answer: TravelAnswer | null;
  /** The question the answer is of. */
  readonly asked: TravelSheetQuestion | null;
  readonly busy: boolean;
  readonly ended: "stopped" | "broken" | null;
  readonly stop: () => void;
}

type Client = NewestQuestion<TravelSheetQuestion, TravelAnswer>;

const createClient = (): Client =>
  askNewestOnly<TravelSheetQuestion, TravelAnswer>(() => {
    const worker = new Worker(new URL("./travel-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<TravelWorker>(worker);
    return { worker, compute: async (question) => await remote.computeTravelSheet(question) };
  });

/** A travel sheet computed in a worker; of questions that wait only the newest is asked, the last answer stays meanwhile. */
export const useTravelSheet = (question: TravelSheetQuestion): TravelSheetState => {
  const client = useRef<Client | null>(null);
  const latest = useRef(0);
  const [shown, setShown] = useState<{ asked: TravelSheetQuestion; answer: TravelAnswer } | null>(null);
  const [busy, setBusy] = useState(true);
  const [ended, setEnded] = useState<TravelSheetState["ended"]>(null);
  useEffect(
    () => () => {
      client.current?.stop();
      client.current = null;
    },
    [],
  );
  useEffect(() => {
    const turn = ++latest.current;
    setBusy(true);
    setEnded(null);
    client.current ??= createClient();
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
  }, [question]);
  const stop = () => {
    client.current?.stop();
    setBusy(false);
    setEnded("stopped");
  };
  return { answer: shown?.answer ?? null, asked: shown?.asked ?? null, busy, ended, stop };
};
