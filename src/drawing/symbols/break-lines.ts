import { formatNumber, rectanglePath } from "../path.ts";
import type { Mark } from "../scene.ts";
import { hairline } from "./look.ts";

/** Zigzags along one break line. */
const ZIGZAGS = 4;

/** Two break lines with the stretch between them left out: what lies under is covered with paper. */
export function drawBreakLines(x0: number, x1: number, y0: number, y1: number): readonly Mark[] {
  const line = (y: number): Mark => {
    const zigzags = Array.from({ length: ZIGZAGS }, (_, i) => {
      const middle = x0 + ((i + 0.5) * (x1 - x0)) / ZIGZAGS;
      return `H${formatNumber(middle - 7)}l4.5 -8l5 16l4.5 -8`;
    });
    return {
      kind: "path",
      d: `M${formatNumber(x0)} ${formatNumber(y)}${zigzags.join("")}H${formatNumber(x1)}`,
      stroke: hairline,
    };
  };
  return [{ kind: "path", d: rectanglePath(x0, y0, x1 - x0, y1 - y0), fill: "paper" }, line(y0), line(y1)];
}
