import { type KeyboardEvent, useRef, useState } from "react";
import type { Scene, Target } from "#drawing";
import { isDirection, nearestTarget } from "./nearest-target.ts";

interface TargetLayerProps {
  readonly scene: Scene;
  readonly onPress: (id: string) => void;
}

const percent = (part: number, whole: number): string => `${(100 * part) / whole}%`;

const boxOf = (target: Target, scene: Scene) => ({
  left: percent(target.x, scene.width),
  top: percent(target.y, scene.height),
  width: percent(target.width, scene.width),
  height: percent(target.height, scene.height),
});

/** The pressable places of a scene as buttons: one stop for Tab, arrows go to the nearest place in their direction. */
export const TargetLayer = ({ scene, onPress }: TargetLayerProps) => {
  const layer = useRef<HTMLDivElement>(null);
  const [visited, setVisited] = useState<string | null>(null);
  const selected = scene.targets.find((target) => target.selected === true);
  const stop = scene.targets.find((target) => target.id === visited) ?? selected ?? scene.targets[0];
  const onKeyDown = (event: KeyboardEvent) => {
    if (stop === undefined || !isDirection(event.key)) return;
    event.preventDefault();
    const next = nearestTarget(scene.targets, stop, event.key);
    if (next !== null)
      layer.current?.querySelector<HTMLButtonElement>(`[data-target="${CSS.escape(next.id)}"]`)?.focus();
  };
  return (
    <div
      ref={layer}
      className="target-layer"
      role="toolbar"
      aria-label={`${scene.title}: places`}
      onKeyDown={onKeyDown}
    >
      {scene.targets.map((target) => (
        <button
          key={target.id}
          type="button"
          className="target"
          data-target={target.id}
          style={boxOf(target, scene)}
          tabIndex={target.id === stop?.id ? 0 : -1}
          aria-pressed={target.selected === true}
          aria-label={target.name}
          onFocus={() => setVisited(target.id)}
          onClick={() => onPress(target.id)}
        />
      ))}
    </div>
  );
};
