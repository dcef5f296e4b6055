import { Link } from "@tanstack/react-router";
import type { PlaceGroup } from "#drawing";
import type { Position } from "../car.ts";
import type { Underside } from "./use-underside.ts";

interface OpenedHeadProps {
  readonly underside: Underside;
  readonly title: string;
  readonly group: PlaceGroup;
  readonly places: readonly Position[];
}

const SQUARES: readonly { readonly group: PlaceGroup; readonly x: number; readonly y: number }[] = [
  { group: "front-right", x: 1, y: 1 },
  { group: "front-left", x: 33, y: 1 },
  { group: "rear-right", x: 1, y: 33 },
  { group: "rear-left", x: 33, y: 33 },
];

/** Which part of the car is open, as four small squares seen from below. */
const OpenedSquares = ({ group }: { readonly group: PlaceGroup }) => (
  <svg viewBox="0 0 62 62" width="48" height="48" aria-hidden="true" className="opened-squares">
    {SQUARES.map((square) => (
      <rect
        key={square.group}
        x={square.x}
        y={square.y}
        width="27"
        height="27"
        rx="3"
        data-open={square.group.startsWith(group)}
      />
    ))}
  </svg>
);

/** Head of an opened corner or axle: where it is, how much of it has been looked at, and the way back to the whole car. */
export const OpenedHead = ({ underside, title, group, places }: OpenedHeadProps) => {
  const seen = places.filter(({ id }) => underside.marks.has(id)).length;
  return (
    <div className="opened-head">
      <div>
        <h2 className="heading">{title}</h2>
        <p className="label">from below, front up</p>
      </div>
      <OpenedSquares group={group} />
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
