import { useEffect, useId, useState } from "react";
import { parseTypedQuantity, typedQuantityTrouble } from "../number/parse-typed-quantity.ts";
import { selectWhenEntered } from "../number/select-when-entered.ts";

interface AmountEntryProps {
  readonly label: string;
  readonly unit: string;
  /** null: nothing has been entered. */
  readonly value: number | null;
  readonly range: { readonly low: number; readonly high: number };
  /** True while nobody has typed it: it stands there so that something can be computed. */
  readonly assumed: boolean;
  /** Said while nothing is entered; only with onClear. */
  readonly empty?: string;
  readonly onEnter: (value: number) => void;
  /** Takes the entry out again; absent: something must stand in the field. */
  readonly onClear?: () => void;
  /** Told what keeps the field from being the value it is computed with; null where it is that value. */
  readonly onOpen: (why: string | null) => void;
}

const textOf = (value: number | null): string => (value === null ? "" : String(value));

const parseAmount = (text: string, { unit, range }: Pick<AmountEntryProps, "unit" | "range">): number | null => {
  const read = parseTypedQuantity(text, unit, range);
  return read.kind === "number" && read.value >= range.low && read.value <= range.high ? read.value : null;
};

/** A number entered at a position: kept as soon as it lies within its range, said where it does not. */
export const AmountEntry = (props: AmountEntryProps) => {
  const { label, unit, value, range, assumed, empty, onEnter, onClear, onOpen } = props;
  const id = useId();
  const note = useId();
  const [text, setText] = useState(textOf(value));
  const [touched, setTouched] = useState(false);
  useEffect(() => {
    setText(textOf(value));
    setTouched(false);
  }, [value]);
  const amount = parseAmount(text, { unit, range });
  const trouble = typedQuantityTrouble(text, range, unit) ?? `give a number from ${range.low} to ${range.high} ${unit}`;
  const cleared = onClear !== undefined && text.trim() === "";
  const wrong = amount === null && !cleared;
  const open = cleared
    ? value === null
      ? null
      : "The field is empty: press Enter to take the figure out."
    : amount === null
      ? `“${text}” was typed: ${trouble}.`
      : amount === value
        ? null
        : `${amount} ${unit} is typed: press Enter to take it.`;
  useEffect(() => {
    onOpen(open);
    return () => onOpen(null);
  }, [open, onOpen]);
  const enter = (confirmed: boolean) => {
    if (cleared && value !== null) onClear?.();
    if (amount !== null && (amount !== value || (assumed && confirmed))) onEnter(amount);
  };
  return (
    <form
      className="amount"
      data-wrong={wrong}
      onSubmit={(event) => {
        event.preventDefault();
        enter(true);
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
          // The same figure typed again is no change, but somebody has typed it.
          onInput={() => setTouched(true)}
          onChange={(event) => setText(event.target.value)}
          onBlur={() => enter(touched)}
        />
        <span className="field-unit">{unit}</span>
      </span>
      <span id={note} className="note">
        {wrong ? trouble : cleared ? (empty ?? "") : `${range.low} to ${range.high}`}
        {amount !== null && assumed ? "; assumed: type what you measured, or press Enter to say it is so" : ""}
      </span>
    </form>
  );
};
