import { useEffect, useId, useRef, useState } from "react";
import { quantityForms } from "#casework";
import { useTypeScale } from "../../look/use-type-scale.ts";
import { selectWhenEntered } from "../../number/select-when-entered.ts";
import { useRefusedText } from "../fields/refused-text.ts";
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
  const [refused, setRefused] = useRefusedText(`${readings.held.visitId}.${cell.key}`);
  const stands = refused ?? readings.textOf(cell);
  const [text, setText] = useState(stands);
  const [last, setLast] = useState(stands);
  const typed = useRef(false);
  const troubleId = useId();
  const foundId = useId();
  const pad = useTypeScale() === "touch" && onActive !== undefined;
  if (stands !== last) {
    setLast(stands);
    setText(stands);
  }
  const keep = () => {
    // The same figure typed once more under the question answers it.
    if (text === stands && typed.current) readings.confirm(cell);
    typed.current = false;
    if (text === stands) return;
    const isKept = readings.keep(cell, text, means);
    setRefused(isKept ? null : text);
    // What says the same as what is on record stands as the record has it.
    if (isKept) setText(readings.textOf(cell));
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
    typed.current = true;
    setText(next);
    onActive?.({ cell, text: next, type });
  };
  const odd = readings.refused.some((one) => one.cellKey === cell.key);
  const trouble = refused === null || text !== refused ? null : cellTrouble(refused, cell.reading);
  const wrong = trouble !== null;
  const found = readings.foundOf(cell);
  const notTaken = stands === "" && found === null && readings.notTaken.has(askedKey(cell.reading));
  const described = [wrong ? troubleId : null, found === null ? null : foundId].filter((id) => id !== null).join(" ");
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
        {...(described === "" ? {} : { "aria-describedby": described })}
        placeholder={notTaken ? "not taken" : ""}
        data-leaves={readings.leaves(cell)}
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
      {found === null ? null : (
        <span id={foundId} className="note reading-found">
          <span className="reading-found-word">found </span>
          {found}
        </span>
      )}
      {wrong ? (
        <span id={troubleId} className="note reading-trouble" role="alert">
          {trouble}
        </span>
      ) : null}
    </>
  );
};
