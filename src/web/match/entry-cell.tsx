import { useId } from "react";
import { selectWhenEntered } from "../number/select-when-entered.ts";

interface EntryCellProps {
  readonly label: string;
  readonly unit: string;
  /** What is wrong with the value; null where nothing is. */
  readonly wrong: string | null;
  readonly value: string;
  /** Stands in the empty field. */
  readonly blank?: string;
  readonly onChange: (value: string) => void;
}

/** One figure of a table of readings, with its unit; what is wrong with it stands under it. */
export const EntryCell = ({ label, unit, wrong, value, blank, onChange }: EntryCellProps) => {
  const note = useId();
  return (
    <span className="entry-cell" data-wrong={wrong !== null}>
      <span className="entry-cell-line">
        <input
          {...selectWhenEntered}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          aria-label={`${label}, ${unit}`}
          aria-invalid={wrong !== null}
          {...(wrong === null ? {} : { "aria-describedby": note })}
          value={value}
          placeholder={blank}
          onChange={(event) => onChange(event.target.value)}
        />
        <span className="field-unit">{unit}</span>
      </span>
      {wrong === null ? null : (
        <span id={note} className="note">
          {wrong}
        </span>
      )}
    </span>
  );
};
