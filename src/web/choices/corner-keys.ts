import type { Corner } from "../car.ts";
import type { PageKey } from "../shell/page-keys.ts";

/** Corners by the keys that lead to them, as they lie on a car seen from below. */
export const CORNER_KEYS: readonly { readonly key: string; readonly corner: Corner }[] = [
  { key: "1", corner: "front-right" },
  { key: "2", corner: "front-left" },
  { key: "3", corner: "rear-right" },
  { key: "4", corner: "rear-left" },
];

/** Keys that choose the corner a page is about. */
export const cornerKeys = (choose: (corner: Corner) => void): readonly PageKey[] =>
  CORNER_KEYS.map(({ key, corner }) => ({
    key,
    does: `the ${corner.replace("-", " ")} corner`,
    run: () => choose(corner),
  }));
