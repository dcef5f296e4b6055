import { Link } from "@tanstack/react-router";
import { groupWords, type PlaceGroup } from "#drawing";

/** As they lie seen from below, front up. */
const SQUARES: readonly PlaceGroup[] = ["front-right", "front-left", "rear-right", "rear-left"];

interface OpenedSquaresProps {
  readonly familyId: string;
  /** The corner or axle that is open. */
  readonly group: PlaceGroup;
}

/** Which part of the car is open, as four small squares seen from below; each opens its corner. */
export const OpenedSquares = ({ familyId, group }: OpenedSquaresProps) => (
  <nav className="opened-squares" aria-label="Corners">
    {SQUARES.map((corner) => (
      <Link
        key={corner}
        to="/families/$familyId/underside/$group"
        params={{ familyId, group: corner }}
        search={({ at, ...last }) => (corner === group && at !== undefined ? { ...last, at } : last)}
        className="opened-square"
        data-open={corner.startsWith(group)}
        aria-current={corner === group ? "page" : undefined}
        aria-label={groupWords(corner)}
      />
    ))}
  </nav>
);
