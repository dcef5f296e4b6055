import { groupWords, type PlaceGroup } from "#drawing";
import type { Position } from "../car.ts";

interface RestLookedAtProps {
  readonly group: PlaceGroup;
  /** Places of the group nobody has marked yet. */
  readonly rest: readonly Position[];
  readonly onLooked: () => void;
}

/** One stroke for all that is left of a corner: looked at, nothing seen. */
export const RestLookedAt = ({ group, rest, onLooked }: RestLookedAtProps) =>
  rest.length === 0 ? null : (
    <button type="button" className="stroke" onClick={onLooked}>
      <svg viewBox="0 0 60 60" width="44" height="44" aria-hidden="true" className="stroke-arrow">
        <circle cx="30" cy="30" r="30" />
        <path d="M18 30H42M32 20L42 30L32 40" />
      </svg>
      <span>
        <strong>Rest of the {groupWords(group).toLowerCase()} looked at, nothing seen</strong>
        <span className="label">one mark for each of the {rest.length}; back takes them off</span>
      </span>
    </button>
  );
