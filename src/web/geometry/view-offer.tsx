import type { Position } from "../car.ts";
import { Choice } from "../underside/choice.tsx";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { FLUID_GONE_LOOKS, TORN_LOOKS } from "../underside/torn-looks.ts";
import type { Geometry } from "./use-geometry.ts";
import { viewOptionsOf } from "./view-options.ts";

/** What a place where nothing is marked can be looked at as; nothing is marked by it. */
export const ViewOffer = ({ geometry, position }: { readonly geometry: Geometry; readonly position: Position }) => (
  <div className="offer-views">
    {viewOptionsOf(possibleFaultsAt(geometry.family, position), []).map(({ key, words, fault }) => (
      <Choice
        key={key}
        wide
        chosen={false}
        onChoose={() => geometry.lookAs(fault)}
        {...(fault.kind === "torn" ? { note: TORN_LOOKS[fault.grade] } : {})}
        {...(fault.kind === "fluid-gone" ? { note: FLUID_GONE_LOOKS } : {})}
      >
        {words.charAt(0).toUpperCase()}
        {words.slice(1)}
      </Choice>
    ))}
  </div>
);
