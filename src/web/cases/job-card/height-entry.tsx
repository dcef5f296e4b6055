import { useId, useState } from "react";
import { metresFromMm } from "#quantity";
import { parseTypedQuantity, typedQuantityTrouble } from "../../number/parse-typed-quantity.ts";
import { selectWhenEntered } from "../../number/select-when-entered.ts";

/** Hub centre to arch on cars, mm: a figure outside is a slip of the pen (from memory; not a limit). */
const RANGE = [200, 600] as const;

interface HeightEntryProps {
  /** As read before the work; null where it was not. */
  readonly asFound: number | null;
  /** Metres. */
  readonly onEnter: (height: number) => void;
}

/** The height the wheel stood at when the final torque was given; without it the step is not signed. */
export const HeightEntry = ({ asFound, onEnter }: HeightEntryProps) => {
  const id = useId();
  const [text, setText] = useState("");
  const bounds = { low: RANGE[0], high: RANGE[1] };
  const read = parseTypedQuantity(text, "mm", bounds);
  const fits = read.kind === "number" && read.value >= RANGE[0] && read.value <= RANGE[1];
  return (
    <form
      className="height-entry field"
      data-wrong={text !== "" && !fits}
      onSubmit={(event) => {
        event.preventDefault();
        if (fits) onEnter(metresFromMm(read.value));
      }}
    >
      <label htmlFor={id}>Hub centre to arch now</label>
      <span className="field-entry">
        <input
          id={id}
          {...selectWhenEntered}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        <span className="field-unit">mm</span>
      </span>
      <span className="note">
        {text !== "" && !fits
          ? `${typedQuantityTrouble(text, bounds, "mm") ?? `${RANGE[0]} to ${RANGE[1]} mm, hub centre to arch`}; `
          : ""}
        {asFound === null ? "not read before the work" : `as found ${Math.round(asFound)} mm`}
      </span>
      <button type="submit" className="press" disabled={!fits}>
        Sign with this height
      </button>
    </form>
  );
};
