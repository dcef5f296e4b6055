import { useCallback, useMemo } from "react";
import { drawUnderside } from "#drawing";
import { familyFromSilhouette, type SilhouetteEntries } from "#vehicle";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";

const LEAST_HEIGHT = { desk: 420, touch: 420 } as const;

/** The car as the entries make it, drawn while they are made. */
export const Preview = ({ entries }: { readonly entries: SilhouetteEntries }) => {
  const made = useMemo(() => familyFromSilhouette(entries), [entries]);
  const family = "family" in made ? made.family : null;
  const draw = useCallback(
    (room: SceneRoom) =>
      family === null
        ? { ...room, title: "", description: "", marks: [], targets: [] }
        : drawUnderside(family, { ...room, states: null }),
    [family],
  );
  return <FittedScene draw={draw} leastHeight={LEAST_HEIGHT} />;
};
