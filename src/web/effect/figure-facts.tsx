import type { ReactNode } from "react";
import { type Figure, formatBand, formatRange } from "#casework";
import { SourceWords } from "../reference/source-words.tsx";

/** Words of a rung, as printed beside a figure. */
export const RUNG_WORDS = {
  layout: "layout only",
  scaled: "scaled from a template",
  measured: "measured on a car",
  matched: "matched to this car's readings",
} as const;

const FACTS = (figure: Figure): readonly { readonly label: string; readonly value: ReactNode }[] => [
  ...(figure.signSure && figure.band ? [{ label: "Lies with 95 % at", value: formatBand(figure) }] : []),
  ...(figure.signSure && figure.range
    ? [{ label: "The range of the fault alone, nothing else uncertain", value: formatRange(figure) }]
    : []),
  { label: "Relation", value: figure.relation },
  { label: "Source", value: <SourceWords line={figure.source} /> },
  { label: "Rung", value: RUNG_WORDS[figure.rung] },
  { label: "±", value: "twice the standard deviation (95 %)" },
];

/** What stands behind a figure: inputs, relation, source, rung. */
export const FigureFacts = ({ figure }: { readonly figure: Figure }) => (
  <div className="figure-facts">
    <dl>
      {FACTS(figure).map(({ label, value }) => (
        <div key={label}>
          <dt className="note">{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
    <table>
      <caption className="note">Inputs</caption>
      <tbody>
        {figure.inputs.map((input) => (
          <tr key={input.label}>
            <th scope="row">{input.label}</th>
            <td>{input.value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);
