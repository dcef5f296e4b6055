import { cornerPositions, fullName, groupWords } from "#drawing";
import type { Corner, Position } from "../car.ts";
import { Choice } from "../underside/choice.tsx";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { FLUID_GONE_LOOKS, TORN_LOOKS } from "../underside/torn-looks.ts";
import type { Geometry } from "./use-geometry.ts";
import { viewOptionsOf } from "./view-options.ts";

const CORNERS: readonly Corner[] = ["front-left", "front-right", "rear-left", "rear-right"];

const CornerPlaces = ({ geometry, corner }: { readonly geometry: Geometry; readonly corner: Corner }) => {
  const own = new Set(cornerPositions(geometry.family, corner).map(({ id }) => id));
  const places = geometry.positions.filter(({ id }) => own.has(id));
  return places.length === 0 ? null : (
    <section>
      <h3 className="margin-title">{groupWords(corner)}</h3>
      <ul>
        {places.map((place) => (
          <li key={place.id}>
            <button type="button" className="link" onClick={() => geometry.choosePosition(place.id)}>
              {place.label}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
};

const Views = ({ geometry, position }: { readonly geometry: Geometry; readonly position: Position }) => (
  <>
    <h2 className="heading">{fullName(position)}: nothing is marked here</h2>
    <p className="lead">Look at it as one of these; the Underside stays as it is.</p>
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
  </>
);

/** Stands where nothing is marked and nothing chosen: the places the linkage computes, then what one can be looked at as. */
export const NothingShown = ({ geometry }: { readonly geometry: Geometry }) => (
  <div className="geometry-offer">
    {geometry.position === null ? (
      <>
        <h2 className="heading">Nothing is marked on this car line</h2>
        <p className="lead">Choose a place to see what it does when it is torn, loose or firmer.</p>
        <div className="offer-places">
          {CORNERS.map((corner) => (
            <CornerPlaces key={corner} geometry={geometry} corner={corner} />
          ))}
        </div>
      </>
    ) : (
      <Views geometry={geometry} position={geometry.position} />
    )}
  </div>
);
