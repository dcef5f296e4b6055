import { splitUnit, unitKeys } from "../../number/written-units.ts";

/** What a key of a unit is called where its sign cannot be read out. */
const UNIT_NAMES: Readonly<Record<string, string>> = { "°": "° degrees", "'": "' minutes of arc", in: "in, inches" };

interface NumberPadProps {
  readonly text: string;
  /** Of the field; what can be typed behind a number beside it has a key. */
  readonly unit: string;
  readonly onType: (text: string) => void;
  readonly onNext: () => void;
  /** True where a reading may lie below nought. */
  readonly signed: boolean;
}

const withPoint = (text: string): string => (text.includes(".") ? text : `${text}.`);

/** A number with a unit behind it in place of any that stood there; the signs of an angle are added one after the other. */
export const withUnit = (text: string, sign: string, fieldUnit: string): string => {
  if (text === "") return "";
  if (fieldUnit === "°") return `${text}${sign}`;
  return `${splitUnit(text, fieldUnit)?.number.trimEnd() ?? text} ${sign}`;
};

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
export const NumberPad = ({ text, unit, onType, onNext, signed }: NumberPadProps) => {
  const keepsText = new Set(["other sign", ...unitKeys(unit).map((sign) => UNIT_NAMES[sign] ?? sign)]);
  const key = (label: string, name: string, nextOf: (text: string) => string) => (
    <button
      key={label}
      type="button"
      className="pad-key"
      aria-label={name}
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => onType(nextOf(!keepsText.has(name) && isAllSelected() ? "" : text))}
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
      <span className="pad-units">
        {unitKeys(unit).map((sign) => key(sign, UNIT_NAMES[sign] ?? sign, (last) => withUnit(last, sign, unit)))}
      </span>
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
