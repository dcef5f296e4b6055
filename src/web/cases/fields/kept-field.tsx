import { type ReactNode, useEffect, useId, useRef, useState } from "react";
import { selectWhenEntered } from "../../number/select-when-entered.ts";

interface KeptFieldProps {
  readonly label: string;
  /** What is on record or typed here before; "" for nothing. */
  readonly value: string;
  /** Called with what was typed when the field is left or Enter is pressed; only where it differs. */
  readonly onKeep: (text: string) => void;
  readonly unit?: string;
  readonly note?: ReactNode;
  readonly wrong?: boolean;
  /** A number: half of one is none, so it is kept when the field is left, not after a pause. */
  readonly numeric?: boolean;
  /** Kept when it is left or on Enter, not after a pause: each keeping is a record of its own. */
  readonly onlyWhenLeft?: boolean;
  /** Several lines. */
  readonly long?: boolean;
  readonly className?: string;
}

/** Keeps a half-typed text after this many milliseconds without a key, so that leaving by any way loses nothing. */
const SETTLED_MS = 600;

/** One field that keeps what is typed by itself: when it is left, on Enter, after a pause in typing, and when the page goes. */
export const KeptField = ({
  label,
  value,
  onKeep,
  unit,
  note,
  wrong = false,
  numeric = false,
  long = false,
  onlyWhenLeft = false,
  className = "",
}: KeptFieldProps) => {
  const id = useId();
  const noteId = useId();
  const [text, setText] = useState(value);
  const [last, setLast] = useState(value);
  // What was in the field when it was left: the record may write it another way ("55 mph" as 88.5), and then shows it so.
  const [left, setLeft] = useState<string | null>(null);
  const typed = useRef({ text, value, onKeep });
  typed.current = { text, value, onKeep };
  // What arrives from elsewhere replaces the text only where nothing else was typed over it.
  if (value !== last) {
    setLast(value);
    if (text === last || text === left) setText(value);
  }
  const keep = () => {
    const now = typed.current;
    if (now.text === now.value) return;
    now.onKeep(now.text);
    // A field for more of the same is empty again once it is kept.
    if (onlyWhenLeft) {
      typed.current = { ...now, text: now.value };
      setText(now.value);
    }
  };
  const keepRef = useRef(keep);
  keepRef.current = keep;
  useEffect(() => {
    if (text === value || onlyWhenLeft || numeric) return;
    const timer = setTimeout(() => keepRef.current(), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [text, value, onlyWhenLeft, numeric]);
  useEffect(() => {
    const leaving = () => keepRef.current();
    window.addEventListener("pagehide", leaving);
    return () => {
      window.removeEventListener("pagehide", leaving);
      leaving();
    };
  }, []);
  const leave = () => {
    setLeft(text);
    keep();
  };
  const shared = {
    id,
    value: text,
    "aria-invalid": wrong,
    ...(note === undefined ? {} : { "aria-describedby": noteId }),
    autoComplete: "off",
    onBlur: leave,
  };
  return (
    <div className={`field kept-field ${className}`} data-wrong={wrong}>
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        {long ? (
          <textarea {...shared} rows={3} onChange={(event) => setText(event.target.value)} />
        ) : (
          <input
            {...shared}
            type="text"
            {...(numeric ? { inputMode: "decimal" as const, ...selectWhenEntered } : {})}
            onChange={(event) => setText(event.target.value)}
            onKeyDown={(event) => {
              selectWhenEntered.onKeyDown(event);
              if (event.key === "Enter") leave();
            }}
          />
        )}
        {unit === undefined ? null : <span className="field-unit">{unit}</span>}
      </span>
      {note === undefined ? null : (
        <span id={noteId} className="note">
          {note}
        </span>
      )}
    </div>
  );
};
