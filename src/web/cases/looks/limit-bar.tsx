import { formatNumber, type PlaceLimit, quantityForms, type StandardReading } from "#casework";
import type { Grade } from "../../car.ts";
import { barScale } from "./limit-scale.ts";

interface LimitBarProps {
  readonly quantity: StandardReading["quantity"];
  readonly limits: readonly PlaceLimit[];
  /** SI; null: nothing is read yet. */
  readonly reading: { readonly value: number; readonly u: number } | null;
  readonly twin: number | null;
  /** What is found at the place; colours the reading. */
  readonly grade: Grade | null;
}

/** The drawing's own units; it is as wide as the margin. */
const WIDTH = 316;
const INSET = 8;
const AXIS = 62;
const EXPANSION = 2;

const end = (x: number): "start" | "middle" | "end" => (x < 70 ? "start" : x > WIDTH - 70 ? "end" : "middle");

/** A reading on its scale, with its uncertainty as a band and each limit as a line with whose it is. */
export const LimitBar = ({ quantity, limits, reading, twin, grade }: LimitBarProps) => {
  const { factor, decimals, unit } = quantityForms[quantity];
  const lines = limits
    .filter(({ holds }) => holds)
    .flatMap(({ lower, upper, whose }) =>
      [lower, upper].flatMap((value) => (value === null ? [] : [{ value: value * factor, whose }])),
    );
  const shown = reading && { value: reading.value * factor, expanded: EXPANSION * reading.u * factor };
  const other = twin === null ? null : twin * factor;
  const scale =
    lines.length === 0 ? null : barScale({ limits: lines.map((l) => l.value), reading: shown, twin: other });
  if (scale === null) return null;
  const x = (value: number): number => INSET + scale.share(value) * (WIDTH - 2 * INSET);
  const figure = (value: number): string => formatNumber(value, decimals);
  const words = [
    shown === null ? "not read yet" : `${figure(shown.value)} ±${figure(shown.expanded)} ${unit}`,
    ...lines.map(({ value, whose }) => `limit ${figure(value)} ${unit}, ${whose}`),
  ].join("; ");
  return (
    <svg className="limit-bar" viewBox={`0 0 ${WIDTH} 84`} role="img" aria-label={words} data-grade={grade ?? "none"}>
      {shown === null ? null : (
        <>
          <rect
            className="limit-band"
            x={x(shown.value - shown.expanded)}
            width={Math.max(1, x(shown.value + shown.expanded) - x(shown.value - shown.expanded))}
            y={AXIS - 20}
            height={14}
          />
          <path className="limit-reading" d={`M${x(shown.value)} ${AXIS - 20}v14`} />
        </>
      )}
      {lines.map(({ value, whose }, i) => (
        <g key={`${value} ${whose}`}>
          <path className="limit-line" d={`M${x(value)} ${i % 2 === 0 ? 16 : 30}V${AXIS + 4}`} />
          <text x={x(value)} y={12} textAnchor={end(x(value))}>
            limit {figure(value)}, {whose}
          </text>
        </g>
      ))}
      {shown === null ? null : (
        <text className="limit-figure" x={x(shown.value)} y={AXIS - 26} textAnchor={end(x(shown.value))}>
          {figure(shown.value)} ±{figure(shown.expanded)}
        </text>
      )}
      {other === null ? null : <path className="limit-twin" d={`M${x(other)} ${AXIS - 6}l-4 -7h8z`} />}
      <path className="limit-axis" d={`M${INSET} ${AXIS}H${WIDTH - INSET}`} />
      {scale.ticks.map((tick, i) => (
        <g key={tick}>
          <path className="limit-axis" d={`M${x(tick)} ${AXIS}v5`} />
          {/* The last figure carries the unit, so the one before it has no room where ticks are close. */}
          <text
            visibility={i === scale.ticks.length - 2 && scale.ticks.length > 5 ? "hidden" : "visible"}
            x={x(tick)}
            y={AXIS + 18}
            textAnchor={end(x(tick)) === "end" ? "end" : "middle"}
          >
            {String(Number(tick.toFixed(4))).replace("-", "−")}
            {i === scale.ticks.length - 1 && unit !== "" ? ` ${unit}` : ""}
          </text>
        </g>
      ))}
    </svg>
  );
};
