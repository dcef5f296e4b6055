import { type RefObject, useLayoutEffect, useRef, useState } from "react";

export interface Room {
  readonly width: number;
  readonly height: number;
}

/** The room an element has on the sheet, in whole px; null until it has been laid out. */
export const useRoom = <E extends HTMLElement>(): readonly [RefObject<E | null>, Room | null] => {
  const element = useRef<E>(null);
  const [room, setRoom] = useState<Room | null>(null);
  useLayoutEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const measure = () => {
      const next = { width: Math.floor(watched.clientWidth), height: Math.floor(watched.clientHeight) };
      setRoom((last) => (last?.width === next.width && last.height === next.height ? last : next));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(watched);
    measure();
    return () => observer.disconnect();
  }, []);
  return [element, room];
};
