import { choiceWords } from "../model/field-words.ts";
import { findingsIn } from "../model/findings-of-sheet.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { EntryFrame } from "./entry-frame.tsx";
import type { EntryProps, FormOf } from "./entry-props.ts";

interface ChosenWordsProps extends EntryProps<FormOf<"words">> {
  /** Words that may be chosen. */
  readonly choices: readonly string[];
}

/** Any of a few words, each to be ticked; what stands there and is none of them can be taken off. */
export const ChosenWordsEntry = ({ editing, path, form, label, choices }: ChosenWordsProps) => {
  const value = sheetValueAt(editing.sheet, path);
  const chosen: readonly unknown[] = Array.isArray(value) ? value : [];
  const strange = chosen.filter((word) => !choices.includes(String(word))).map(String);
  const tick = (word: string, ticked: boolean): void => {
    const kept = [...choices, ...strange].filter((one) => (one === word ? ticked : chosen.includes(one)));
    editing.edit(path, kept.length === 0 ? undefined : kept);
  };
  return (
    <EntryFrame label={label} description={form.description} findings={findingsIn(editing.findings, path)} several>
      {({ note }) => (
        <span className="ticks" aria-describedby={note}>
          {[...choices, ...strange].map((word) => (
            <label key={word} className="tick">
              <input
                type="checkbox"
                checked={chosen.includes(word)}
                onChange={(event) => tick(word, event.target.checked)}
              />
              <span>
                {choiceWords(word)}
                <span className="unseen">: {label.toLowerCase()}</span>
              </span>
            </label>
          ))}
        </span>
      )}
    </EntryFrame>
  );
};
