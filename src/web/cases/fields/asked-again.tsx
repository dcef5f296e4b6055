import type { ReactNode } from "react";
import type { Finding } from "#contract";

/** What a program that sends records is told; a person has buttons for it. */
const FOR_PROGRAMS: readonly (readonly [RegExp, string])[] = [
  [/\s*(Read it again; if|If) it stands, send it with "confirmed": true\./g, ""],
  [
    /set odometer_offset_km of the car to what the new one lacks \(at least ([^)]*)\)/g,
    "say so below; the new one lacks at least $1",
  ],
  [/send this one under a new id/gi, "record it anew"],
];

/** A hint without what only a sending program needs. */
export const plainHint = (hint: string): string =>
  FOR_PROGRAMS.reduce((text, [words, instead]) => text.replace(words, instead), hint).trim();

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
