import { useEffect, useRef, useState } from "react";
import type { AxleName, Family } from "../../car.ts";
import { createTravelClient, type TravelClient } from "./travel-client.ts";
import type { TravelEffect } from "./travel-effect.ts";

export interface TravelState {
  readonly effect: TravelEffect | null;
  readonly busy: boolean;
  /** True where the computation broke off; the next change starts it again. */
  readonly broken: boolean;
}

/** What the entered points do over travel, computed in a worker; of questions that wait only the newest is asked. */
export const useTravel = (kept: Family | null, entered: Family | null, axle: AxleName | null): TravelState => {
  const client = useRef<TravelClient | null>(null);
  const latest = useRef(0);
  const [shown, setShown] = useState<{ readonly axle: AxleName; readonly effect: TravelEffect } | null>(null);
  const [busy, setBusy] = useState(false);
  const [broken, setBroken] = useState(false);
  useEffect(
    () => () => {
      client.current?.stop();
      client.current = null;
    },
    [],
  );
  useEffect(() => {
    const turn = ++latest.current;
    setBusy(false);
    if (entered === null || axle === null) return;
    setBusy(true);
    setBroken(false);
    client.current ??= createTravelClient();
    client.current.ask({ kept, entered, axle }).then(
      (effect) => {
        if (effect !== null) setShown({ axle, effect });
        if (effect !== null && turn === latest.current) setBusy(false);
      },
      () => {
        if (turn !== latest.current) return;
        setBroken(true);
        setBusy(false);
      },
    );
  }, [kept, entered, axle]);
  return { effect: shown !== null && shown.axle === axle ? shown.effect : null, busy, broken };
};
