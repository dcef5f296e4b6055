import { useEffect, useRef, useState } from "react";
import { quantityForms } from "#casework";
import { useTypeScale } from "../../look/use-type-scale.ts";
import { askedKey, type Cell } from "./reading-cells.ts";
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
  const [wrong, setWrong] = useState(false);
  const pad = useTypeScale() === "touch" && onActive !== undefined;
  if (stands !== last) {
    setLast(stands);
    setText(stands);
  }
  const keep = () => {
    if (text === stands) return;
    setWrong(!readings.keep(cell, text, means));
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
    setWrong(false);
    onActive?.({ cell, text: next, type });
  };
  const odd = readings.refused.some((one) => one.cellKey === cell.key);
  const notTaken = stands === "" && readings.notTaken.has(askedKey(cell.reading));
  return (
    <input
      className="reading-input"
      type="text"
      inputMode={pad ? "none" : "decimal"}
      autoComplete="off"
      data-cell={cell.key}
      data-wrong={wrong || odd}
      aria-label={`${name}, ${quantityForms[cell.reading.quantity].unit}`}
      aria-invalid={wrong || odd}
      placeholder={notTaken ? "not taken" : ""}
      value={text}
      onFocus={() => onActive?.({ cell, text, type })}
      onChange={(event) => type(event.target.value)}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === "Enter") keep();
      }}
    />
  );
};
