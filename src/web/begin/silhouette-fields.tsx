import { useId } from "react";
import { formatNumber } from "#casework";
import type { SilhouetteRanges } from "../server/silhouettes.ts";
import { LayoutChoice } from "./layout-choice.tsx";
import { NotOffered } from "./not-offered.tsx";
import { NumberField } from "./number-field.tsx";
import {
  assumedForm,
  boundsOf,
  type DrivenAxle,
  NUMBER_ENTRIES,
  type NumberEntry,
  type SilhouetteForm,
} from "./silhouette-form.ts";

interface SilhouetteFieldsProps {
  readonly ranges: SilhouetteRanges;
  readonly form: SilhouetteForm;
  readonly wrong: Readonly<Record<string, string>>;
  /** The name it will be kept under. */
  readonly keptName: string;
  readonly onChange: (form: SilhouetteForm) => void;
}

const ASSUMED = assumedForm();

const DRIVEN: readonly { readonly axle: DrivenAxle; readonly words: string }[] = [
  { axle: "front", words: "front" },
  { axle: "rear", words: "rear" },
  { axle: "both", words: "both" },
];

/** What is said of the name: what it will be where nothing, or what somebody else has, is entered. */
const nameNote = (entered: string, keptName: string): string => {
  if (entered.trim() === "") return `blank: “${keptName}”`;
  return entered.trim() === keptName ? "what you call it" : `there is one of this name; this is kept as “${keptName}”`;
};

/** What is said behind the note of an entry nothing has been typed in. */
const blankNote = (entered: string, assumed: string): string => (entered.trim() === "" ? `; ${assumed} assumed` : "");

const rangeWords = (entry: NumberEntry, ranges: SilhouetteRanges): string => {
  const { low, high } = boundsOf(entry, ranges);
  return `${formatNumber(low, 0)} to ${formatNumber(high, 0)} ${entry.unit}`;
};

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly note: string;
  readonly wrong: boolean;
  /** Stands in the empty field: what is assumed. */
  readonly blank?: string;
  readonly onChange: (value: string) => void;
}

const TextField = ({ label, value, note, wrong, blank, onChange }: TextFieldProps) => {
  const id = useId();
  const noteId = useId();
  return (
    <div className="field field-text" data-wrong={wrong}>
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        <input
          id={id}
          type="text"
          autoComplete="off"
          value={value}
          placeholder={blank}
          aria-describedby={noteId}
          aria-invalid={wrong}
          onChange={(event) => onChange(event.target.value)}
        />
      </span>
      <span id={noteId} className="note">
        {note}
      </span>
    </div>
  );
};

const DrivenField = ({ form, onChange }: Pick<SilhouetteFieldsProps, "form" | "onChange">) => {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>Driven axle</label>
      <span className="field-entry">
        <select
          id={id}
          value={form.drivenAxle}
          onChange={(event) => {
            const chosen = DRIVEN.find(({ axle }) => axle === event.target.value);
            onChange({ ...form, drivenAxle: chosen?.axle ?? "" });
          }}
        >
          <option value="">not known</option>
          {DRIVEN.map(({ axle, words }) => (
            <option key={axle} value={axle}>
              {words}
            </option>
          ))}
        </select>
      </span>
      {form.drivenAxle === "" ? <span className="note">{ASSUMED.drivenAxle} assumed</span> : null}
    </div>
  );
};

/** Everything a car line is begun with: two silhouettes and ten entries; what is left blank is assumed, and says so. */
export const SilhouetteFields = ({ ranges, form, wrong, keptName, onChange }: SilhouetteFieldsProps) => (
  <>
    <LayoutChoice
      axle="front"
      layouts={ranges.front_layout?.enum ?? []}
      value={form.frontLayout}
      assumed={ASSUMED.frontLayout}
      onChange={(frontLayout) => onChange({ ...form, frontLayout })}
    />
    <LayoutChoice
      axle="rear"
      layouts={ranges.rear_layout?.enum ?? []}
      value={form.rearLayout}
      assumed={ASSUMED.rearLayout}
      onChange={(rearLayout) => onChange({ ...form, rearLayout })}
    />
    <NotOffered />
    <div className="begin-fields">
      <TextField
        label="Name"
        value={form.name}
        note={wrong.name ?? nameNote(form.name, keptName)}
        wrong={wrong.name !== undefined}
        onChange={(name) => onChange({ ...form, name })}
      />
      <TextField
        label="Tyre size"
        value={form.tyreSize}
        note={wrong.tyre_size ?? `as on the sidewall${blankNote(form.tyreSize, ASSUMED.tyreSize)}`}
        blank={ASSUMED.tyreSize}
        wrong={wrong.tyre_size !== undefined}
        onChange={(tyreSize) => onChange({ ...form, tyreSize })}
      />
      {NUMBER_ENTRIES.map((entry) => {
        const { low, high } = boundsOf(entry, ranges);
        return (
          <NumberField
            key={entry.key}
            label={entry.label}
            unit={entry.unit}
            low={low}
            high={high}
            value={form.numbers[entry.key]}
            wrong={wrong[entry.key] ?? null}
            note={`${rangeWords(entry, ranges)}${blankNote(form.numbers[entry.key], ASSUMED.numbers[entry.key])}`}
            blank={ASSUMED.numbers[entry.key]}
            onChange={(value) => onChange({ ...form, numbers: { ...form.numbers, [entry.key]: value } })}
          />
        );
      })}
      <DrivenField form={form} onChange={onChange} />
    </div>
  </>
);
