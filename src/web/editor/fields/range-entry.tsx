import { findingsIn } from "../model/findings-of-sheet.ts";
import { isKeyed, sheetValueAt } from "../model/sheet-value.ts";
import { EntryFrame } from "./entry-frame.tsx";
import type { EntryProps, FormOf } from "./entry-props.ts";
import { NumberInput } from "./number-input.tsx";

const KEYS = ["low_share", "high_share"] as const;
const ENDS = ["least", "most"] as const;

/** The range with one end written, in the form it has; nothing where both are blank. */
const withEnd = (value: unknown, index: 0 | 1, share: unknown): unknown => {
  if (isKeyed(value)) {
    const { [KEYS[index]]: _, ...others } = value;
    return share === undefined ? others : { ...value, [KEYS[index]]: share };
  }
  const old: readonly unknown[] = Array.isArray(value) ? value : [];
  const next = [0, 1].map((at) => (at === index ? share : old[at]) ?? null);
  return next.every((end) => end === null) ? undefined : next;
};

/** A torn share: what is left of the sound rate, from least to most, 0 to 1. */
export const RangeEntry = ({ editing, path, form, label, unit }: EntryProps<FormOf<"range">>) => {
  const value = sheetValueAt(editing.sheet, path);
  const findings = findingsIn(editing.findings, path);
  const endOf = (index: 0 | 1): unknown =>
    isKeyed(value) ? value[KEYS[index]] : Array.isArray(value) ? value[index] : undefined;
  return (
    <EntryFrame label={label} unit={unit} description={form.description} findings={findings} several>
      {({ note }) => (
        <span className="figure-row">
          {([0, 1] as const).map((index) => (
            <NumberInput
              key={index}
              name={`${label}, ${ENDS[index]}, of 1`}
              value={endOf(index)}
              wrong={findings.length > 0}
              describedBy={note}
              blank={ENDS[index]}
              onValue={(share) => editing.edit(path, withEnd(value, index, share))}
            />
          ))}
        </span>
      )}
    </EntryFrame>
  );
};
