import { useCallback } from "react";
import { axlePositionsOf, cornerPositions, drawAxle, drawCorner, groupWords, type PlaceGroup } from "#drawing";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { OpenedHead } from "./opened-head.tsx";
import { RestLookedAt } from "./rest-looked-at.tsx";
import type { Underside } from "./use-underside.ts";

/** Narrower than this the two sheets only show the car large enough one below the other. */
const ROOM_FOR_TWO = 900;
/** On an upright tablet the margin slides over them. */
const cornerHeight = (width: number): number => (width < ROOM_FOR_TWO ? 920 : 640);
/** An axle is one sheet. */
const axleHeight = (): number => 460;

interface OpenedSceneProps {
  readonly underside: Underside;
  readonly group: PlaceGroup;
  readonly onScale: (scale: string | null) => void;
}

/** One corner opened as two sheets, or an axle as one: every place a row to tap. */
export const OpenedScene = ({ underside, group, onScale }: OpenedSceneProps) => {
  const { loaded, states, selected } = underside;
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
  const places =
    group === "front" || group === "rear" ? axlePositionsOf(family, group) : cornerPositions(family, group);
  return (
    <div className="opened">
      <OpenedHead underside={underside} title={groupWords(group)} group={group} places={places} />
      <div className="opened-sheets">
        <FittedScene
          draw={draw}
          leastHeight={group === "front" || group === "rear" ? axleHeight : cornerHeight}
          onPress={underside.select}
          onScale={onScale}
        />
      </div>
      <RestLookedAt
        group={group}
        rest={places.filter(({ id }) => !underside.marks.has(id))}
        onLooked={() => underside.markSound(places.filter(({ id }) => !underside.marks.has(id)))}
      />
    </div>
  );
};
