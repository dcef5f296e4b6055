import type { ReactNode } from "react";
import type { Finding } from "#contract";
import { plainHint } from "../unsent/plain-words.ts";

interface AskedAgainProps {
  /** Where it was typed, as the page names it. */
  readonly where: string;
  readonly findings: readonly Finding[];
  /** A photo was not taken; it stays where it came from. */
  readonly isPhoto?: boolean;
  /** What can be done with it. */
  readonly children: ReactNode;
}

/** Something typed that the store has not taken, asked about in plain words: where, what came, what was needed. */
export const AskedAgain = ({ where, findings, isPhoto = false, children }: AskedAgainProps) => (
  <section className="asked-again" aria-label={`${where}: asked again`}>
    <p>
      <strong>{isPhoto ? `${where} was not kept` : `${where}: is that so?`}</strong>
    </p>
    {findings.map((finding) => (
      <p key={`${finding.code} ${finding.got}`} className="label">
        {isPhoto ? "It is" : "Typed was"} {finding.got}; needed is {finding.needed}. {plainHint(finding.hint)}
      </p>
    ))}
    {isPhoto ? null : <p className="note">What you typed is kept here, not yet at the workshop's store.</p>}
    <div className="margin-links">{children}</div>
  </section>
);
