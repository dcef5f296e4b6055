import type { FieldForm, FieldOfKey } from "../model/field-form.ts";
import { alternativeOf, asAlternative } from "../model/field-form.ts";
import { choiceWords, fieldWords } from "../model/field-words.ts";
import { formatSheetPath, type SheetPath } from "../model/sheet-path.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { ChoiceEntry, WordEntry, YesNoEntry } from "./choice-entry.tsx";
import { ChosenWordsEntry } from "./chosen-words-entry.tsx";
import { EntryList } from "./entry-list.tsx";
import type { FormOf } from "./entry-props.ts";
import type { FieldsContext } from "./fields-context.ts";
import { FiguresEntry } from "./figures-entry.tsx";
import { MoneyEntry, NumberEntry } from "./number-entry.tsx";
import { PieceEntry } from "./piece-entry.tsx";
import { PutOnFile } from "./put-on-file.tsx";
import { RangeEntry } from "./range-entry.tsx";
import { TextEntry } from "./text-entry.tsx";
import { WordsEntry } from "./words-entry.tsx";

interface FieldProps {
  readonly context: FieldsContext;
  readonly path: SheetPath;
  readonly form: FieldForm;
  readonly required: boolean;
}

/** The fields of an object, one after the other. */
export const GroupFields = ({
  context,
  path,
  fields,
}: {
  readonly context: FieldsContext;
  readonly path: SheetPath;
  readonly fields: readonly FieldOfKey[];
}) =>
  fields
    .filter(({ key }) => !context.elsewhere.has(key))
    .map(({ key, form, required }) => (
      <SheetField key={key} context={context} path={[...path, key]} form={form} required={required} />
    ));

const OneOfFields = ({ context, path, form }: FieldProps & { readonly form: FormOf<"one-of"> }) => {
  const { editing } = context;
  const value = sheetValueAt(editing.sheet, path);
  const chosen = alternativeOf(form, value);
  const words = fieldWords(form.by ?? "").label;
  const choices = form.alternatives.map(({ word }) => ({
    value: word,
    words: form.by === null ? fieldWords(word).label : choiceWords(word),
  }));
  return (
    <>
      <ChoiceEntry
        editing={editing}
        path={form.by === null ? path : [...path, form.by]}
        label={form.by === null ? "By" : words}
        description={form.description}
        choices={choices}
        chosen={chosen?.word}
        mayBeBlank={false}
        onChoose={(word) => editing.edit(path, asAlternative(form, value, String(word)))}
      />
      {chosen === undefined ? null : <GroupFields context={context} path={path} fields={chosen.fields} />}
    </>
  );
};

/** The entry of one place of the sheet, by what may stand there. */
export const SheetField = (props: FieldProps) => (
  <div data-place={formatSheetPath(props.path)}>
    <FieldByForm {...props} />
  </div>
);

const FieldByForm = ({ context, path, form, required }: FieldProps) => {
  const key = String(path.at(-1));
  const { label, unit } = fieldWords(key);
  const entry = { editing: context.editing, path, label, unit };
  switch (form.kind) {
    case "number":
      return key.endsWith("_cents") ? <MoneyEntry {...entry} form={form} /> : <NumberEntry {...entry} form={form} />;
    case "text":
      return <TextEntry {...entry} form={form} />;
    case "word":
      return <WordEntry {...entry} form={form} required={required} />;
    case "yes-no":
      return <YesNoEntry {...entry} form={form} required={required} />;
    case "figures":
      return <FiguresEntry {...entry} form={form} />;
    case "range":
      return <RangeEntry {...entry} form={form} />;
    case "words":
      return form.choices === null ? (
        <WordsEntry {...entry} form={form} />
      ) : (
        <ChosenWordsEntry {...entry} form={form} choices={form.choices} />
      );
    case "point":
    case "piece":
      return <PieceEntry {...entry} form={form} />;
    case "fixed":
      return null;
    case "list":
      return (
        <EntryList context={context} path={path} form={form} title={label}>
          {(place) => <EntryFields context={context} path={place} form={form.entry} />}
        </EntryList>
      );
    case "group":
      return (
        <PutOnFile
          editing={context.editing}
          path={path}
          title={label}
          description={form.description}
          required={required}
        >
          <GroupFields context={context} path={path} fields={form.fields} />
        </PutOnFile>
      );
    case "one-of":
      return (
        <PutOnFile
          editing={context.editing}
          path={path}
          title={label}
          description={form.description}
          required={required}
        >
          <OneOfFields context={context} path={path} form={form} required={required} />
        </PutOnFile>
      );
  }
};

/** The fields of one entry of a list, whatever it is made of. */
export const EntryFields = ({ context, path, form }: Omit<FieldProps, "required">) => {
  if (form.kind === "group") return <GroupFields context={context} path={path} fields={form.fields} />;
  if (form.kind === "one-of") return <OneOfFields context={context} path={path} form={form} required />;
  return <SheetField context={context} path={path} form={form} required />;
};
