import { useEffect, useId, useState } from "react";
import { parseTypedQuantity, typedQuantityTrouble } from "../number/parse-typed-quantity.ts";
import { selectWhenEntered } from "../number/select-when-entered.ts";

interface AmountEntryProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly range: { readonly low: number; readonly high: number };
  readonly onEnter: (value: number) => void;
}

const parseAmount = (text: string, { unit, range }: Pick<AmountEntryProps, "unit" | "range">): number | null => {
  const read = parseTypedQuantity(text, unit, range);
  return read.kind === "number" && read.value >= range.low && read.value <= range.high ? read.value : null;
};

/** A number entered at a position: kept as soon as it lies within its range, said where it does not. */
export const AmountEntry = ({ label, unit, value, range, onEnter }: AmountEntryProps) => {
  const id = useId();
  const note = useId();
  const [text, setText] = useState(String(value));
  useEffect(() => setText(String(value)), [value]);
  const wrong = parseAmount(text, { unit, range }) === null;
  const enter = () => {
    const amount = parseAmount(text, { unit, range });
    if (amount !== null && amount !== value) onEnter(amount);
  };
  return (
    <form
      className="amount"
      data-wrong={wrong}
      onSubmit={(event) => {
        event.preventDefault();
        enter();
      }}
    >
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        <input
          id={id}
          {...selectWhenEntered}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-describedby={note}
          aria-invalid={wrong}
          onChange={(event) => setText(event.target.value)}
          onBlur={enter}
        />
        <span className="field-unit">{unit}</span>
      </span>
      <span id={note} className="note">
        {wrong
          ? (typedQuantityTrouble(text, range, unit) ?? `give a number from ${range.low} to ${range.high}`)
          : `${range.low} to ${range.high}`}
      </span>
    </form>
  );
};
