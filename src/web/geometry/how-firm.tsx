import type { FirmerRubber } from "#casework";
import { FirmerEntry } from "../underside/firmer-entry.tsx";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import type { Geometry } from "./use-geometry.ts";

/** Each field says beside itself what is not taken yet. */
const saidAtTheField = () => undefined;

/** How firm the part is that is looked at or drawn besides; nothing where none is. Nothing is marked by it. */
export const HowFirm = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, position, shown, lookAs, lines } = geometry;
  const besides = lines.also.find((fault): fault is FirmerRubber => fault.kind === "firmer");
  const firmer = shown?.kind === "firmer" ? shown : besides;
  if (position === null || firmer === undefined) return null;
  return (
    <section>
      <h3 className="margin-title">How firm</h3>
      <FirmerEntry
        firmer={firmer}
        rubber={possibleFaultsAt(family, position).rubber}
        onEnter={shown?.kind === "firmer" ? lookAs : (entered) => lines.chooseAlso("firmer", entered)}
        onOpen={saidAtTheField}
      />
    </section>
  );
};
