import { FirmerEntry } from "../underside/firmer-entry.tsx";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { EVERY_RUBBER, firmerBy, firmerOf } from "./travel-search.ts";
import type { TravelView } from "./use-travel-view.ts";

/** Each field says beside itself what is not taken yet. */
const saidAtTheField = () => undefined;

/** One old hardness is said for all rubber of a corner. */
const NONE_ON_FILE = { hardness: null, rateOrigin: "guess" } as const;

/** How firm the firmer line is; nothing without one. */
export const HowFirm = ({ view }: { readonly view: TravelView }) => {
  const { family, search, stiffenable, change } = view;
  const place = stiffenable.find(({ id }) => id === search.firmer);
  if (place === undefined && search.firmer !== EVERY_RUBBER) return null;
  return (
    <section>
      <h3 className="margin-title">How firm</h3>
      <FirmerEntry
        firmer={firmerOf(search)}
        rubber={place === undefined ? NONE_ON_FILE : possibleFaultsAt(family, place).rubber}
        onEnter={(firmer) => change({ firmer_by: firmerBy(firmer) })}
        onOpen={saidAtTheField}
      />
    </section>
  );
};
