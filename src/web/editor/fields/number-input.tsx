import { useState } from "react";
import type { NumberBounds } from "../../number/parse-typed-number.ts";
import { selectWhenEntered } from "../../number/select-when-entered.ts";
import { isSameValue } from "../model/sheet-value.ts";
import { formatTyped, typedValue } from "../model/typed-number.ts";

/** The text of a field for a number: as it is typed while it means the value, else the value as it stands. */
export const useTypedText = (
  value: unknown,
  bounds: NumberBounds = {},
  unit = "",
): readonly [string, (text: string) => unknown] => {
  const [text, setText] = useState(formatTyped(value));
  const shown = isSameValue(typedValue(text, bounds, unit), value ?? undefined) ? text : formatTyped(value);
  return [
    shown,
    (typed) => {
      setText(typed);
      return typedValue(typed, bounds, unit);
    },
  ];
};

/** One arrow key moves a coordinate so far, mm; with Shift ten times as far. */
const STEP = 1;
/** Digits kept of a stepped figure, so that 0.1 + 0.2 stays 0.3. */
const DIGITS = 6;

interface NumberInputProps {
  readonly name: string;
  readonly value: unknown;
  readonly wrong: boolean;
  readonly describedBy?: string;
  /** Of the field, where another one may be typed behind a figure. */
  readonly unit?: string;
  readonly blank?: string;
  readonly onValue: (value: unknown) => void;
  readonly onFocus?: () => void;
}

/** One figure of a row: typed, or moved by the arrow keys. */
export const NumberInput = ({ name, value, wrong, describedBy, unit, blank, onValue, onFocus }: NumberInputProps) => {
  const [shown, type] = useTypedText(value, {}, unit);
  return (
    <input
      className="figure-input"
      type="text"
      inputMode="decimal"
      autoComplete="off"
      aria-label={name}
      aria-invalid={wrong}
      aria-describedby={describedBy}
      data-wrong={wrong}
      placeholder={blank}
      value={shown}
      {...selectWhenEntered}
      onFocus={(event) => {
        selectWhenEntered.onFocus(event);
        onFocus?.();
      }}
      onChange={(event) => onValue(type(event.target.value))}
      onKeyDown={(event) => {
        selectWhenEntered.onKeyDown(event);
        if ((event.key !== "ArrowUp" && event.key !== "ArrowDown") || typeof value !== "number") return;
        event.preventDefault();
        const step = (event.key === "ArrowUp" ? STEP : -STEP) * (event.shiftKey ? 10 : 1);
        onValue(Number((value + step).toFixed(DIGITS)));
      }}
    />
  );
};
