import { Link } from "@tanstack/react-router";
import { groupWords, type PlaceGroup } from "#drawing";
import { placesOf } from "./places-of.ts";
import type { Looks } from "./use-looks.ts";

/** As they lie seen from below, front up. */
const SQUARES: readonly PlaceGroup[] = ["front-right", "front-left", "rear-right", "rear-left"];

interface VisitSquaresProps {
  readonly looks: Looks;
  readonly group: PlaceGroup;
}

/** Which part of the car is open, as four small squares; hatched where something is not looked at yet. */
export const VisitSquares = ({ looks, group }: VisitSquaresProps) => (
  <nav className="visit-squares" aria-label="Corners">
    {SQUARES.map((corner) => {
      const done = placesOf(looks.loaded.family, corner).every(({ id }) => looks.states[id] !== undefined);
      return (
        <Link
          key={corner}
          to="/cases/$visit/underside/$group"
          params={{ visit: looks.held.visitId, group: corner }}
          className="visit-square"
          data-open={corner.startsWith(group)}
          data-done={done}
          aria-current={corner === group ? "page" : undefined}
          aria-label={`${groupWords(corner)}${done ? ", looked at" : ""}`}
        />
      );
    })}
  </nav>
);
