import { FirmerEntry } from "../underside/firmer-entry.tsx";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import type { Geometry } from "./use-geometry.ts";

/** Each field says beside itself what is not taken yet. */
const saidAtTheField = () => undefined;

/** How firm the part is that is looked at; nothing where it is looked at as something else. Nothing is marked by it. */
export const HowFirm = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, position, shown, lookAs } = geometry;
  if (position === null || shown?.kind !== "firmer") return null;
  return (
    <section>
      <h3 className="margin-title">How firm</h3>
      <FirmerEntry
        firmer={shown}
        rubber={possibleFaultsAt(family, position).rubber}
        onEnter={lookAs}
        onOpen={saidAtTheField}
      />
    </section>
  );
};
