import type { AxleName, Corner, Family, Position } from "#vehicle";
import { countSeen, hasFinding, type PositionStates } from "../below/position-state.ts";
import type { Target } from "../scene.ts";
import { LEAST_TARGET } from "../tokens.ts";
import type { UndersideLayout } from "./underside-layout.ts";

/** What opens by itself from the whole car: a corner, or what belongs to an axle as a whole. */
export type PlaceGroup = Corner | AxleName;

/** Ids of the targets that open a group, apart from the ids of positions. */
export const groupTargetId = (group: PlaceGroup): string =>
  group === "front" || group === "rear" ? `axle/${group}` : `corner/${group}`;

/** The group a target opens; null for any other id. */
export function groupOfTarget(id: string): PlaceGroup | null {
  const groups: readonly PlaceGroup[] = ["front-left", "front-right", "rear-left", "rear-right", "front", "rear"];
  return groups.find((group) => groupTargetId(group) === id) ?? null;
}

/** Kinds that are judged on the axle as a whole although they have a side. */
const AXLE_KINDS: readonly Position["kind"][] = [
  "bar-bush",
  "rack",
  "rack-mount",
  "steering-play",
  "subframe-mount",
  "differential-mount",
  "brake-fluid",
  "parking-brake",
  "brake-result",
];

/** The group a position is opened with. */
export function groupOf(position: Position): PlaceGroup {
  if (position.side === null || AXLE_KINDS.includes(position.kind)) return position.axle;
  return `${position.axle}-${position.side}`;
}

/** A group in words: "Front left", "Front axle". */
export function groupWords(group: PlaceGroup): string {
  const words = group === "front" || group === "rear" ? `${group} axle` : group.replace("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Half width of the middle target, metres from the centre line. */
const MIDDLE = 0.24;

/** The words of the sides, before and behind the car, open their corners too: from their base line outward, page units. */
const WITH_WORDS = 18;

/** One target per corner and one per axle middle; they tile the drawing between the label columns, so none overlap. */
export function carTargets(
  family: Family,
  positions: readonly Position[],
  states: PositionStates | null,
  layout: UndersideLayout,
  opened: PlaceGroup | null,
): readonly Target[] {
  const { view, left, right } = layout;
  const [top, bottom] = [Math.max(layout.headY - WITH_WORDS, 0), layout.footY + WITH_WORDS];
  const half = Math.max(MIDDLE * view.scale, LEAST_TARGET / 2);
  const split =
    view.break === null
      ? view.y((family.front.wheel.centre[0] + family.rear.wheel.centre[0]) / 2)
      : (view.y(view.break.front) + view.y(view.break.rear)) / 2;
  const keep = view.break === null ? 0 : view.break.gap / 2;
  const rows = [
    { axle: "front" as const, y: top, height: split - keep - top },
    { axle: "rear" as const, y: split + keep, height: bottom - split - keep },
  ];
  return rows.flatMap(({ axle, y, height }) => {
    const places = [
      { group: `${axle}-right` as const, x: left, width: view.centreX - half - left },
      { group: axle, x: view.centreX - half, width: 2 * half },
      { group: `${axle}-left` as const, x: view.centreX + half, width: right - view.centreX - half },
    ];
    return places.flatMap(({ group, x, width }): Target[] => {
      const own = positions.filter((position) => groupOf(position) === group);
      if (own.length === 0) return [];
      const found = states === null ? 0 : own.filter(({ id }) => hasFinding(states[id])).length;
      const seen =
        states === null ? "" : `, ${countSeen(own, states)} of ${own.length} looked at, ${found} with a finding`;
      const selected = group === opened ? { selected: true } : {};
      return [{ id: groupTargetId(group), name: `${groupWords(group)}${seen}`, x, y, width, height, ...selected }];
    });
  });
}
