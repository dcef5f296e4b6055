import type { SeenBy } from "#casework";
import { formatNumber } from "../path.ts";
import type { Mark } from "../scene.ts";
import { dashes } from "../tokens.ts";

/** What opens the play of a joint, in few words. */
export const seenNames: Readonly<Record<SeenBy, string>> = {
  hand: "a rock of the wheel opens it",
  bar: "only a bar opens it",
  nothing: "pressed shut",
  "too-close": "too close to call",
};

/** A joint by what opens its play: an open ring (hand), half filled (bar), filled (nothing), a dashed ring (too close to call). */
export function drawSeenMark(by: SeenBy, cx: number, cy: number, r: number): readonly Mark[] {
  const stroke = { colour: "ink", width: 1.6 } as const;
  const ring: Mark = { kind: "circle", cx, cy, r, fill: "paper", stroke };
  const [top, bottom, radius] = [formatNumber(cy - r), formatNumber(cy + r), formatNumber(r)];
  switch (by) {
    case "hand":
      return [ring];
    case "bar":
      return [
        ring,
        {
          kind: "path",
          d: `M${formatNumber(cx)} ${top}A${radius} ${radius} 0 0 0 ${formatNumber(cx)} ${bottom}z`,
          fill: "ink",
        },
      ];
    case "nothing":
      return [{ kind: "circle", cx, cy, r, fill: "ink", stroke }];
    case "too-close":
      return [{ kind: "circle", cx, cy, r, fill: "paper", stroke: { ...stroke, dash: dashes.tooClose } }];
  }
}
