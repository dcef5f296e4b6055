import { useEffect, useState } from "react";

/** A dragged slider writes the address only after it has rested this long, ms. */
const REST_MS = 250;

/** A setting as it is dragged, written to the address once it rests; the address wins when it changes by itself. */
export const useDragged = <Setting>(
  addressed: Setting,
  write: (setting: Setting) => void,
): readonly [Setting, (setting: Setting) => void] => {
  const [dragged, setDragged] = useState<Setting | null>(null);
  const key = JSON.stringify(addressed);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key is the address; what was dragged ends when it changes
  useEffect(() => setDragged(null), [key]);
  useEffect(() => {
    if (dragged === null || JSON.stringify(dragged) === key) return;
    const timer = setTimeout(() => write(dragged), REST_MS);
    return () => clearTimeout(timer);
  }, [dragged, key, write]);
  return [dragged ?? addressed, setDragged];
};
