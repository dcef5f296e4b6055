import { memo, useId } from "react";
import { type Scene, svgTreeOf } from "#drawing";
import { renderSvgNode } from "./svg-node-view.tsx";
import { TargetLayer } from "./target-layer.tsx";

interface SceneViewProps {
  readonly scene: Scene;
  /** Absent: the scene is only looked at, its targets are not offered. */
  readonly onPress?: (id: string) => void;
}

const SceneDrawing = memo(({ scene }: { readonly scene: Scene }) => {
  const idPrefix = useId();
  return renderSvgNode(svgTreeOf(scene, { theme: "css", idPrefix, fontFamily: "inherit" }), 0);
});

/** A scene on screen: the drawing as SVG, its places as buttons over it. */
export const SceneView = ({ scene, onPress }: SceneViewProps) => (
  <div className="scene" style={{ aspectRatio: `${scene.width} / ${scene.height}`, maxWidth: scene.width }}>
    <SceneDrawing scene={scene} />
    {onPress === undefined || scene.targets.length === 0 ? null : <TargetLayer scene={scene} onPress={onPress} />}
  </div>
);
