import { Link } from "@tanstack/react-router";
import type { PlaceGroup } from "#drawing";
import type { Position } from "../car.ts";
import { OpenedSquares } from "./opened-squares.tsx";
import type { Underside } from "./use-underside.ts";

interface OpenedHeadProps {
  readonly underside: Underside;
  readonly title: string;
  readonly group: PlaceGroup;
  readonly places: readonly Position[];
}

/** Head of an opened corner or axle: where it is, how much of it has been looked at, and the way back to the whole car. */
export const OpenedHead = ({ underside, title, group, places }: OpenedHeadProps) => {
  const seen = places.filter(({ id }) => underside.states[id] !== undefined).length;
  return (
    <div className="opened-head">
      <div>
        <h2 className="heading">{title}</h2>
        <p className="label">from below, front up</p>
      </div>
      <OpenedSquares familyId={underside.loaded.family.id} group={group} />
      <div className="opened-count">
        <p className="lead">
          {seen} of {places.length} looked at
        </p>
        <p className="label">
          <Link
            to="/families/$familyId/underside"
            params={{ familyId: underside.loaded.family.id }}
            search={(last) => last}
          >
            Whole car
          </Link>
        </p>
      </div>
    </div>
  );
};
