import { type AppraisedFinding, formatChance } from "#casework";

/** What a reading beyond its limits can come from, what is known of each here, and what follows. */
export const WhatItCanMean = ({ finding }: { readonly finding: AppraisedFinding }) => (
  <>
    <h3 className="margin-title">What it can mean</h3>
    {finding.advice === null ? null : <p className="margin-lead">{finding.advice}</p>}
    {finding.means.map((meaning) => (
      <p key={meaning.cause} className="reason-line">
        {meaning.label}
        {meaning.chance === null ? "" : `, ${formatChance(meaning.chance)}`}
        <span className="note"> {meaning.says}</span>
      </p>
    ))}
    {finding.means.some((m) => m.chance !== null) ? (
      <p className="note">
        Chances are those of the complaint that one corner sits low, with what was seen at this corner; the shares are
        invented start values.
      </p>
    ) : null}
  </>
);
