import { useId } from "react";
import { formatNumber } from "#casework";
import { selectWhenEntered } from "../number/select-when-entered.ts";

interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly value: string;
  /** What is wrong with the value, in plain words; null where nothing is. */
  readonly wrong: string | null;
  /** Said under it while nothing is wrong; absent: the range. */
  readonly note?: string;
  /** Stands in the empty field. */
  readonly blank?: string;
  readonly onChange: (value: string) => void;
}

/** One number with its unit and the range it may lie in. */
export const NumberField = ({
  label,
  unit,
  low,
  high,
  value,
  wrong,
  note: said,
  blank,
  onChange,
}: NumberFieldProps) => {
  const id = useId();
  const note = useId();
  return (
    <div className="field" data-wrong={wrong !== null}>
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        <input
          id={id}
          {...selectWhenEntered}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={value}
          placeholder={blank}
          aria-describedby={note}
          aria-invalid={wrong !== null}
          onChange={(event) => onChange(event.target.value)}
        />
        <span className="field-unit">{unit}</span>
      </span>
      <span id={note} className="note">
        {wrong ?? said ?? `${formatNumber(low, 0)} to ${formatNumber(high, 0)} ${unit}`}
      </span>
    </div>
  );
};
