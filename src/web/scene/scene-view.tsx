import { memo, useId } from "react";
import type { Scene } from "#drawing";
import { MarkList } from "./mark-view.tsx";
import { TargetLayer } from "./target-layer.tsx";

interface SceneViewProps {
  readonly scene: Scene;
  /** Absent: the scene is only looked at, its targets are not offered. */
  readonly onPress?: (id: string) => void;
}

const SceneDrawing = memo(({ scene }: { readonly scene: Scene }) => {
  const title = useId();
  const description = useId();
  return (
    <svg viewBox={`0 0 ${scene.width} ${scene.height}`} role="img" aria-labelledby={`${title} ${description}`}>
      <title id={title}>{scene.title}</title>
      <desc id={description}>{scene.description}</desc>
      <MarkList marks={scene.marks} />
    </svg>
  );
});

/** A scene on screen: the drawing as SVG, its places as buttons over it. */
export const SceneView = ({ scene, onPress }: SceneViewProps) => (
  <div className="scene" style={{ aspectRatio: `${scene.width} / ${scene.height}`, maxWidth: scene.width }}>
    <SceneDrawing scene={scene} />
    {onPress === undefined || scene.targets.length === 0 ? null : <TargetLayer scene={scene} onPress={onPress} />}
  </div>
);
