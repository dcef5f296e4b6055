import { polyline } from "../path.ts";
import type { Mark } from "../scene.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import type { Plot } from "./place-beside.ts";
import type { Axis } from "./ticks.ts";

/** An axis, and what stands at its end: what is shown and its unit. */
export interface NamedAxis {
  readonly axis: Axis;
  /** Left out where another plot under this one says it. */
  readonly name: string | null;
}

/** Both axes of a plot that begins at nought upright, with their ticks and names; the upright name stands over the plot. */
export function drawFrame(
  plot: Plot,
  { axis: upright, name: over }: NamedAxis,
  { axis: foot, name: below }: NamedAxis,
): readonly Mark[] {
  const right = plot.x + plot.width;
  const across = (y: number): string =>
    polyline([
      [plot.x, y],
      [right, y],
    ]);
  const inside = foot.ticks.filter((tick) => plot.toX(tick) >= plot.x - 0.5 && plot.toX(tick) <= right + 0.5);
  return [
    ...upright.ticks.flatMap((tick, i): Mark[] =>
      tick < 0
        ? []
        : [
            { kind: "path", d: across(plot.toY(tick)), stroke: tick === 0 ? thinLine : hairline },
            {
              kind: "text",
              x: plot.x - 10,
              y: plot.toY(tick) + 4.5,
              text: upright.words[i] ?? "",
              style: "note",
              anchor: "end",
            },
          ],
    ),
    ...inside.flatMap((tick): Mark[] => {
      const x = plot.toX(tick);
      const d = polyline([
        [x, plot.bottom],
        [x, plot.bottom + 5],
      ]);
      return [
        { kind: "path", d, stroke: thinLine },
        { kind: "text", x, y: plot.bottom + 20, text: String(tick), style: "note", anchor: "middle" },
      ];
    }),
    ...(over === null ? [] : [{ kind: "text", x: 24, y: plot.top - 20, text: over, style: "label-second" } as const]),
    ...(below === null
      ? []
      : [{ kind: "text", x: right, y: plot.bottom + 42, text: below, style: "label-second", anchor: "end" } as const]),
  ];
}
