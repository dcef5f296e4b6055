interface NumberPadProps {
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onNext: () => void;
  /** True where a reading may lie below nought. */
  readonly signed: boolean;
}

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3"] as const;

/** Digits under the thumb; they type into the field that is open and leave it in focus. */
export const NumberPad = ({ text, onType, onNext, signed }: NumberPadProps) => {
  const key = (label: string, name: string, next: string) => (
    <button
      key={label}
      type="button"
      className="pad-key"
      aria-label={name}
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => onType(next)}
    >
      {label}
    </button>
  );
  return (
    <fieldset className="pad">
      <legend className="unseen">Number pad</legend>
      {DIGITS.map((digit) => key(digit, digit, text + digit))}
      {signed
        ? key("±", "other sign", text.startsWith("-") ? text.slice(1) : `-${text}`)
        : key(".", "point", text.includes(".") ? text : `${text}.`)}
      {key("0", "0", `${text}0`)}
      {key("back", "back, take the last off", text.slice(0, -1))}
      {signed ? key(".", "point", text.includes(".") ? text : `${text}.`) : null}
      <button
        type="button"
        className="press pad-next"
        onPointerDown={(event) => event.preventDefault()}
        onClick={onNext}
      >
        Record, next
      </button>
    </fieldset>
  );
};
