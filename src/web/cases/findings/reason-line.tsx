import { CONFIDENCE, type PlaceFinding, type Reason, reasonHead, reasonOutcome } from "#casework";
import { SourceWords } from "../../reference/source-words.tsx";

const RELATIONS = {
  limit:
    "Guarded decision: beyond or within only where the chance of it, from reading and standard uncertainty, is at least the confidence; else too close to call.",
  twin: "The difference of the two sides against what two sides may differ by, guarded at the same confidence.",
  past: "The change since the last visit against what it may change by, guarded at the same confidence.",
} as const;

const inputsOf = (reason: Reason): readonly (readonly [string, string])[] => {
  const { judgement } = reason;
  if (judgement === null || judgement.decision === null) return [];
  return [
    ["Reading and what it is held against", reason.text],
    ["Chance that it is within", judgement.probabilityWithin.toPrecision(3)],
    ["Confidence asked", `${100 * CONFIDENCE} %`],
    ...(judgement.against === "limit" ? [["Whose limit", judgement.owner] as const] : []),
  ];
};

const sourceOf = (judgement: NonNullable<Reason["judgement"]>): string => {
  if ("why" in judgement) return "not on file";
  return judgement.against === "limit" && judgement.decision !== null ? judgement.source : "from memory";
};

/** One thing that speaks for a grade; a reading opens to inputs, relation and source. */
export const ReasonLine = ({ reason, finding }: { readonly reason: Reason; readonly finding: PlaceFinding }) => {
  const { judgement } = reason;
  if (judgement === null)
    return (
      <p className="reason-line">
        {reason.text}
        <span className="note"> {finding.looks?.looks[0]?.who ?? ""}</span>
      </p>
    );
  return (
    <details className="figure-line reason-line">
      <summary>
        <span>{reasonHead(reason)}</span>
        <span className="note">
          {reason.text}; {reasonOutcome(reason)}
        </span>
      </summary>
      <div className="figure-facts">
        <dl>
          <div>
            <dt className="note">Relation</dt>
            <dd>{"why" in judgement ? "None: it was held against nothing." : RELATIONS[judgement.against]}</dd>
          </div>
          <div>
            <dt className="note">Source</dt>
            <dd>
              <SourceWords line={sourceOf(judgement)} />
            </dd>
          </div>
        </dl>
        <table>
          <caption className="note">Inputs</caption>
          <tbody>
            {inputsOf(reason).map(([label, value]) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{value}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
};
