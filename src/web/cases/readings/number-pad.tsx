interface NumberPadProps {
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onNext: () => void;
  /** True where a reading may lie below nought. */
  readonly signed: boolean;
}

const withPoint = (text: string): string => (text.includes(".") ? text : `${text}.`);

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3"] as const;

/** True where all that stands in the field that is open is selected, so that the next key replaces it. */
const isAllSelected = (): boolean => {
  const field = document.activeElement;
  return (
    field instanceof HTMLInputElement &&
    field.value !== "" &&
    field.selectionStart === 0 &&
    field.selectionEnd === field.value.length
  );
};

/** Digits under the thumb; they type into the field that is open and leave it in focus. */
export const NumberPad = ({ text, onType, onNext, signed }: NumberPadProps) => {
  const key = (label: string, name: string, nextOf: (text: string) => string) => (
    <button
      key={label}
      type="button"
      className="pad-key"
      aria-label={name}
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => onType(nextOf(name !== "other sign" && isAllSelected() ? "" : text))}
    >
      {label}
    </button>
  );
  return (
    <fieldset className="pad">
      <legend className="unseen">Number pad</legend>
      {DIGITS.map((digit) => key(digit, digit, (last) => last + digit))}
      {signed
        ? key("±", "other sign", (last) => (/^[-−]/.test(last) ? last.slice(1) : `−${last}`))
        : key(".", "point", withPoint)}
      {key("0", "0", (last) => `${last}0`)}
      {key("back", "back, take the last off", (last) => last.slice(0, -1))}
      {signed ? key(".", "point", withPoint) : null}
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
