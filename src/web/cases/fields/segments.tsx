interface SegmentsProps<T extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: T; readonly words: string }[];
  readonly value: T | null;
  /** null: nobody said. */
  readonly onChange: (value: T | null) => void;
}

/** A few words in a row, of which one may hold; a second tap takes it back. */
export const Segments = <T extends string>({ label, options, value, onChange }: SegmentsProps<T>) => (
  <fieldset className="segments">
    <legend>{label}</legend>
    <span className="segments-row">
      {options.map((option) => (
        <button
          key={option.value}
          type="button"
          className="segment"
          aria-pressed={option.value === value}
          onClick={() => onChange(option.value === value ? null : option.value)}
        >
          {option.words}
        </button>
      ))}
    </span>
  </fieldset>
);
