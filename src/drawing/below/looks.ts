import type { AxleName, Family, Position, Side } from "#vehicle";
import { type Look, soundLook } from "../symbols/look.ts";
import { strokes } from "../tokens.ts";
import { type PartName, partOf } from "./part-of.ts";
import { hasFinding, type PositionStates } from "./position-state.ts";

/** How the parts of one side of an axle are drawn; side null: of the whole axle. */
export type LookOf = (axle: AxleName, side: Side | null, part: PartName) => Look;

/**
 * Looks of all parts from what is known of their positions: heavier with a finding or where selected, hatched where
 * nobody has looked at any of them. Without states (null) every part is drawn plain.
 */
export function computeLooks(
  family: Family,
  positions: readonly Position[],
  states: PositionStates | null,
  selected: string | null,
): LookOf {
  const byPart = new Map<string, Position[]>();
  const add = (key: string, position: Position) => byPart.set(key, [...(byPart.get(key) ?? []), position]);
  for (const position of positions) {
    const part = partOf(family[position.axle], position);
    if (part === null) continue;
    add(`${position.axle}/${part}`, position);
    if (position.side !== null) add(`${position.axle}-${position.side}/${part}`, position);
  }
  return (axle, side, part) => {
    const known = byPart.get(side === null ? `${axle}/${part}` : `${axle}-${side}/${part}`) ?? [];
    const heavy = known.some(({ id }) => id === selected || hasFinding(states?.[id]));
    const unseen = states !== null && known.length > 0 && known.every(({ id }) => states[id] === undefined);
    return { ...soundLook, weight: heavy ? strokes.finding : strokes.sound, unseen };
  };
}
