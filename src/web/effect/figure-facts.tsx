import type { ReactNode } from "react";
import { type EffectPart, type FaultEffect, type Figure, formatBand, formatRange } from "#casework";
import { SourceWords } from "../reference/source-words.tsx";
import { rungWords } from "./rung-words.ts";

/** What every figure of one computation stands on. */
export type Basis = Pick<FaultEffect, "parts" | "invented">;

const factsOf = (
  figure: Figure,
  invented: boolean,
): readonly { readonly label: string; readonly value: ReactNode }[] => [
  ...(figure.signSure && figure.band ? [{ label: "Lies with 95 % at", value: formatBand(figure) }] : []),
  ...(figure.signSure && figure.range
    ? [{ label: "The range of the fault alone, nothing else uncertain", value: formatRange(figure) }]
    : []),
  { label: "Relation", value: figure.relation },
  { label: "Source", value: <SourceWords line={figure.source} /> },
  { label: "Rung", value: rungWords(figure.rung, invented) },
  { label: "±", value: "twice the standard deviation (95 %)" },
];

const Parts = ({ title, parts }: { readonly title: string; readonly parts: readonly EffectPart[] }) => (
  <table>
    <caption className="note">{title}</caption>
    <tbody>
      {parts.map(({ label, value, known }) => (
        <tr key={label}>
          <th scope="row">{label}</th>
          <td>
            {value}
            <span className="note part-known">{known}</span>
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** What stands behind a figure: inputs, every point and rate it comes from, relation, source, rung. */
export const FigureFacts = ({ figure, basis }: { readonly figure: Figure; readonly basis: Basis }) => (
  <div className="figure-facts">
    <dl>
      {factsOf(figure, basis.invented).map(({ label, value }) => (
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
    <Parts
      title="Hard points at ride height: x forward from the front axle, y left, z up"
      parts={basis.parts.filter(({ kind }) => kind === "point")}
    />
    <Parts title="Rates, with the axis of each bush" parts={basis.parts.filter(({ kind }) => kind === "rate")} />
  </div>
);
