import { Link } from "@tanstack/react-router";
import { useCallback } from "react";
import { drawAxle, drawCorner, groupWords, type PlaceGroup } from "#drawing";
import { FittedScene, type SceneRoom } from "../../scene/fitted-scene.tsx";
import { placesOf } from "./places-of.ts";
import type { Looks } from "./use-looks.ts";
import { VisitSquares } from "./visit-squares.tsx";

/** Narrower than this the two sheets only show the car large enough one below the other. */
const ROOM_FOR_TWO = 900;
const cornerHeight = (width: number): number => (width < ROOM_FOR_TWO ? 920 : 640);
/** An axle is one sheet. */
const axleHeight = (): number => 460;

interface LooksOpenedProps {
  readonly looks: Looks;
  readonly group: PlaceGroup;
  readonly onScale: (scale: string | null) => void;
}

const Head = ({
  looks,
  group,
  seen,
  all,
}: Pick<LooksOpenedProps, "looks" | "group"> & { readonly seen: number; readonly all: number }) => (
  <div className="opened-head">
    <div>
      <h2 className="heading">{groupWords(group)}</h2>
      <p className="label">from below, front up</p>
    </div>
    <VisitSquares looks={looks} group={group} />
    <div className="opened-count">
      <p className="lead">
        {seen} of {all} looked at
      </p>
      <p className="label">
        <Link to="/cases/$visit/underside" params={{ visit: looks.held.visitId }}>
          Whole car
        </Link>
      </p>
    </div>
  </div>
);

/** One stroke for all that is left of a corner; right after it, the way back. */
const Stroke = ({ looks, group }: Pick<LooksOpenedProps, "looks" | "group">) => {
  const places = placesOf(looks.loaded.family, group);
  const rest = places.filter(({ id }) => looks.states[id] === undefined && looks.looksAt(id)?.signs.length !== 1);
  const made = looks.stroke.filter(({ place }) => places.some(({ id }) => id === place));
  if (rest.length === 0 && made.length === 0) return null;
  if (rest.length === 0)
    return (
      <div className="stroke-undo">
        <span className="label">Looked at, nothing seen: one record for each of {made.length} places.</span>
        <button type="button" className="link" onClick={() => looks.takeBack(made)}>
          Undo: take the {made.length} back
        </button>
      </div>
    );
  return (
    <button type="button" className="stroke" onClick={() => looks.markRest(rest)}>
      <svg viewBox="0 0 60 60" width="44" height="44" aria-hidden="true" className="stroke-arrow">
        <circle cx="30" cy="30" r="30" />
        <path d="M18 30H42M32 20L42 30L32 40" />
      </svg>
      <span>
        <strong>Rest of the {groupWords(group).toLowerCase()} looked at, nothing seen</strong>
        <span className="label">one record for each of the {rest.length}; undo stays</span>
      </span>
    </button>
  );
};

/** One corner opened as two sheets, or an axle as one: every place a row to tap, fed from the looks of this visit. */
export const LooksOpened = ({ looks, group, onScale }: LooksOpenedProps) => {
  const { loaded, states, selected } = looks;
  const { family } = loaded;
  const selectedId = selected?.id ?? null;
  const draw = useCallback(
    (room: SceneRoom) => {
      const options = { ...room, states, selected: selectedId };
      return group === "front" || group === "rear"
        ? drawAxle(family, group, options)
        : drawCorner(family, group, options);
    },
    [family, group, states, selectedId],
  );
  const places = placesOf(family, group);
  return (
    <div className="opened">
      <Head
        looks={looks}
        group={group}
        seen={places.filter(({ id }) => states[id] !== undefined).length}
        all={places.length}
      />
      <div className="opened-sheets">
        <FittedScene
          draw={draw}
          leastHeight={group === "front" || group === "rear" ? axleHeight : cornerHeight}
          onPress={looks.select}
          onScale={onScale}
        />
      </div>
      <Stroke looks={looks} group={group} />
    </div>
  );
};
