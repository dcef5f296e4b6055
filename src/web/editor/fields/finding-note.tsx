import type { Finding } from "#contract";
import { findingWords } from "../model/findings-of-sheet.ts";

/** What the checks find at a place, beside its field. */
export const FindingNote = ({ id, findings }: { readonly id?: string; readonly findings: readonly Finding[] }) =>
  findings.length === 0 ? null : (
    <span id={id} className="finding-note">
      {findings.map((finding) => (
        <span key={`${finding.code} ${finding.path} ${finding.got}`}>{findingWords(finding)}</span>
      ))}
    </span>
  );
