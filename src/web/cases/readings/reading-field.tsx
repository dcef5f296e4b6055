import { useEffect, useId, useRef, useState } from "react";
import { quantityForms } from "#casework";
import { useTypeScale } from "../../look/use-type-scale.ts";
import { selectWhenEntered } from "../../number/select-when-entered.ts";
import { askedKey, type Cell, cellTrouble } from "./reading-cells.ts";
import type { Means, Readings } from "./use-readings.ts";

/** The field somebody is typing in, for the margin and its number pad. */
export interface ActiveField {
  readonly cell: Cell;
  readonly text: string;
  /** Types over what stands in the field. */
  readonly type: (text: string) => void;
}

interface ReadingFieldProps {
  readonly cell: Cell;
  readonly readings: Readings;
  /** Said of the field for somebody who does not see where it stands. */
  readonly name: string;
  /** Absent: there is no pad for it, the device's own is used. */
  readonly onActive?: (active: ActiveField) => void;
  /** How it is read; absent: by the means of its group. */
  readonly means?: Means;
}

/** One reading: kept when the field is left, on Enter, or when the page goes; under a thumb the margin's pad types in it. */
export const ReadingField = ({ cell, readings, name, onActive, means }: ReadingFieldProps) => {
  const stands = readings.textOf(cell);
  const [text, setText] = useState(stands);
  const [last, setLast] = useState(stands);
  const [trouble, setTrouble] = useState<string | null>(null);
  const troubleId = useId();
  const pad = useTypeScale() === "touch" && onActive !== undefined;
  if (stands !== last) {
    setLast(stands);
    setText(stands);
  }
  const keep = () => {
    if (text === stands) return;
    setTrouble(readings.keep(cell, text, means) ? null : cellTrouble(text, cell.reading));
  };
  const keepRef = useRef(keep);
  keepRef.current = keep;
  useEffect(() => {
    const leaving = () => keepRef.current();
    window.addEventListener("pagehide", leaving);
    return () => {
      window.removeEventListener("pagehide", leaving);
      leaving();
    };
  }, []);
  const type = (next: string) => {
    setText(next);
    setTrouble(null);
    onActive?.({ cell, text: next, type });
  };
  const odd = readings.refused.some((one) => one.cellKey === cell.key);
  const notTaken = stands === "" && readings.notTaken.has(askedKey(cell.reading));
  const wrong = trouble !== null;
  return (
    <>
      <input
        {...selectWhenEntered}
        className="reading-input"
        type="text"
        inputMode={pad ? "none" : "decimal"}
        autoComplete="off"
        data-cell={cell.key}
        data-wrong={wrong || odd}
        aria-label={`${name}, ${quantityForms[cell.reading.quantity].unit}`}
        aria-invalid={wrong || odd}
        {...(wrong ? { "aria-describedby": troubleId } : {})}
        placeholder={notTaken ? "not taken" : ""}
        value={text}
        onFocus={(event) => {
          selectWhenEntered.onFocus(event);
          onActive?.({ cell, text, type });
        }}
        onChange={(event) => type(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          selectWhenEntered.onKeyDown(event);
          if (event.key === "Enter") keep();
        }}
      />
      {wrong ? (
        <span id={troubleId} className="note reading-trouble" role="alert">
          {trouble}
        </span>
      ) : null}
    </>
  );
};
