import { choiceWords } from "../model/field-words.ts";
import { findingsAt } from "../model/findings-of-sheet.ts";
import type { SheetPath } from "../model/sheet-path.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { formatTyped } from "../model/typed-number.ts";
import type { Editing } from "../use-editing.ts";
import { EntryFrame } from "./entry-frame.tsx";
import { type EntryProps, type FormOf, NOT_ON_FILE } from "./entry-props.ts";

interface ChoiceEntryProps {
  readonly editing: Editing;
  readonly path: SheetPath;
  readonly label: string;
  readonly description: string;
  readonly choices: readonly { readonly value: unknown; readonly words: string }[];
  readonly onChoose: (value: unknown) => void;
  /** Chosen where the value itself is none of the choices. */
  readonly chosen?: unknown;
  /** False where something must stand there: "not on file" is offered only while nothing does. */
  readonly mayBeBlank: boolean;
}

const BLANK = -1;

/** One of a few. */
export const ChoiceEntry = ({
  editing,
  path,
  label,
  description,
  choices,
  chosen: given,
  onChoose,
  mayBeBlank,
}: ChoiceEntryProps) => {
  const value = given ?? sheetValueAt(editing.sheet, path) ?? undefined;
  const chosen = choices.findIndex((choice) => choice.value === value);
  const strange = chosen === BLANK && value !== undefined;
  return (
    <EntryFrame label={label} description={description} findings={findingsAt(editing.findings, path)}>
      {({ id, note }) => (
        <select
          id={id}
          value={chosen}
          aria-describedby={note}
          onChange={(event) => onChoose(choices[Number(event.target.value)]?.value)}
        >
          {mayBeBlank || chosen === BLANK ? (
            <option value={BLANK}>{strange ? formatTyped(value) : NOT_ON_FILE}</option>
          ) : null}
          {choices.map((choice, index) => (
            <option key={choice.words} value={index}>
              {choice.words}
            </option>
          ))}
        </select>
      )}
    </EntryFrame>
  );
};

/** A word of a fixed list. */
export const WordEntry = ({
  form,
  required,
  ...entry
}: EntryProps<FormOf<"word">> & { readonly required: boolean }) => (
  <ChoiceEntry
    {...entry}
    description={form.description}
    mayBeBlank={!required}
    choices={form.choices.map((value) => ({ value, words: choiceWords(value) }))}
    onChoose={(value) => entry.editing.edit(entry.path, value)}
  />
);

/** Yes, no, or not on file. */
export const YesNoEntry = ({
  form,
  required,
  ...entry
}: EntryProps<FormOf<"yes-no">> & { readonly required: boolean }) => (
  <ChoiceEntry
    {...entry}
    description={form.description}
    mayBeBlank={!required}
    choices={[
      { value: true, words: "yes" },
      { value: false, words: "no" },
    ]}
    onChoose={(value) => entry.editing.edit(entry.path, value)}
  />
);
