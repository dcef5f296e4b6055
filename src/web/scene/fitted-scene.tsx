import { type RefObject, useEffect, useMemo, useRef } from "react";
import type { Scene, TypeScale } from "#drawing";
import { useRoom } from "../look/use-room.ts";
import { useTypeScale } from "../look/use-type-scale.ts";
import { bringIntoView } from "./bring-into-view.ts";
import { SceneView } from "./scene-view.tsx";

/** The room a scene is drawn for. */
export interface SceneRoom {
  readonly width: number;
  readonly height: number;
  readonly type: TypeScale;
}

interface FittedSceneProps {
  /** Draws the scene for the room there is; keep it the same function while nothing it draws has changed. */
  readonly draw: (room: SceneRoom) => Scene;
  /** Never drawn lower than this, px; the sheet scrolls instead. It may depend on the width there is. */
  readonly leastHeight: (width: number, type: TypeScale) => number;
  /** In less width than this it is drawn for this much and shown smaller. */
  readonly leastWidth?: number;
  readonly onPress?: (id: string) => void;
  /** Told the scale of the drawing, for the title block. */
  readonly onScale?: (scale: string | null) => void;
}

/** A scene drawn anew for the room it has, so that a page unit stays a px and type keeps its size. */
export const FittedScene = ({ draw, leastHeight, leastWidth = 0, onPress, onScale }: FittedSceneProps) => {
  const [frame, room] = useRoom<HTMLDivElement>();
  const type = useTypeScale();
  const least = leastHeight(room?.width ?? 0, type);
  const scene = useMemo(() => {
    if (room === null) return null;
    const shrink = Math.max(leastWidth / room.width, 1);
    return draw({ width: room.width * shrink, height: room.height * shrink, type });
  }, [draw, room, type, leastWidth]);
  const selected = scene?.targets.find((target) => target.selected === true)?.id ?? null;
  const scale = scene?.scale ?? null;
  useEffect(() => onScale?.(scale), [onScale, scale]);
  useShown(frame, selected, room?.height ?? 0);
  return (
    <div ref={frame} className="fitted" style={{ minHeight: least }}>
      {scene === null ? null : <SceneView scene={scene} {...(onPress === undefined ? {} : { onPress })} />}
    </div>
  );
};

/** Keeps the selected place in view where the sheet scrolls. */
const useShown = (frame: RefObject<HTMLDivElement | null>, selected: string | null, height: number) => {
  const shown = useRef<string | null>(null);
  useEffect(() => {
    const key = selected === null ? null : `${selected} ${height}`;
    if (key === null || key === shown.current || frame.current === null) return;
    shown.current = key;
    const place = frame.current.querySelector(`[data-target="${CSS.escape(selected ?? "")}"]`);
    if (place !== null) bringIntoView(place, frame.current);
  }, [frame, selected, height]);
};
