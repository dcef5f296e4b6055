import { memo, useEffect, useId, useRef } from "react";
import { nearestPoint, type Scene, svgTreeOf } from "#drawing";
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

/**
 * Lets the drawn places of a scene be pressed where they lie. Each stands for a target that is a button, which the
 * keyboard and a screen reader use; so this is a way more, not the only one.
 */
const usePressedPoints = (scene: Scene, onPress: ((id: string) => void) | undefined) => {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = frame.current;
    if (element === null || onPress === undefined || scene.points === undefined) return;
    const press = (event: MouseEvent) => {
      if (event.target instanceof Element && event.target.closest("button") !== null) return;
      const box = element.getBoundingClientRect();
      const scale = scene.width / box.width;
      const id = nearestPoint(scene, (event.clientX - box.left) * scale, (event.clientY - box.top) * scale);
      if (id !== null) onPress(id);
    };
    element.addEventListener("click", press);
    return () => element.removeEventListener("click", press);
  }, [scene, onPress]);
  return frame;
};

/** A scene on screen: the drawing as SVG, its places as buttons over it. */
export const SceneView = ({ scene, onPress }: SceneViewProps) => {
  const frame = usePressedPoints(scene, onPress);
  return (
    <div
      ref={frame}
      className="scene"
      style={{ aspectRatio: `${scene.width} / ${scene.height}`, maxWidth: scene.width }}
    >
      <SceneDrawing scene={scene} />
      {onPress === undefined || scene.targets.length === 0 ? null : <TargetLayer scene={scene} onPress={onPress} />}
    </div>
  );
};
