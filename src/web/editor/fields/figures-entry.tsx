import { findingsIn } from "../model/findings-of-sheet.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { EntryFrame } from "./entry-frame.tsx";
import type { EntryProps, FormOf } from "./entry-props.ts";
import { NumberInput } from "./number-input.tsx";

const COORDINATES = ["x", "y", "z"] as const;
const ENDS = ["from", "to"] as const;

/** Names of figures that belong together: coordinates, or the ends of a range. */
const figureNames = (key: string, count: number): readonly string[] =>
  count === 3 ? COORDINATES : key === "section_mm" ? ["width", "height"] : ENDS;

/** The figures with one of them written; nothing where all are blank. */
const withFigure = (value: unknown, count: number, index: number, figure: unknown): unknown => {
  const old: readonly unknown[] = Array.isArray(value) ? value : [];
  const next = Array.from({ length: count }, (_, at) => (at === index ? figure : old[at]) ?? null);
  return next.every((one) => one === null) ? undefined : next;
};

/** Figures that belong together, in one row. */
export const FiguresEntry = ({ editing, path, form, label, unit }: EntryProps<FormOf<"figures">>) => {
  const value = sheetValueAt(editing.sheet, path);
  const names = figureNames(String(path.at(-1)), form.entries.length);
  return (
    <EntryFrame
      label={label}
      unit={unit}
      description={form.description}
      findings={findingsIn(editing.findings, path)}
      several
    >
      {({ note }) => (
        <span className="figure-row">
          {form.entries.map((_, index) => (
            <NumberInput
              // biome-ignore lint/suspicious/noArrayIndexKey: the place in the row is what a figure is
              key={index}
              name={[label, names[index] ?? String(index + 1), unit].filter((part) => part !== "").join(", ")}
              value={Array.isArray(value) ? value[index] : index === 0 && typeof value === "string" ? value : undefined}
              wrong={findingsIn(editing.findings, path).length > 0}
              describedBy={note}
              unit={unit}
              blank={names[index] ?? ""}
              onValue={(figure) => editing.edit(path, withFigure(value, form.entries.length, index, figure))}
            />
          ))}
        </span>
      )}
    </EntryFrame>
  );
};
