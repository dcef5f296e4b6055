import { useCallback } from "react";
import { drawUnderside } from "#drawing";
import type { Family } from "../car.ts";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";

const leastHeight = () => 420;

/** The car as the entries make it, drawn while they are made. */
export const Preview = ({ family }: { readonly family: Family }) => {
  const draw = useCallback((room: SceneRoom) => drawUnderside(family, { ...room, states: null }), [family]);
  return <FittedScene draw={draw} leastHeight={leastHeight} />;
};
