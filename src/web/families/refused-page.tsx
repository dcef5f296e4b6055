import { Link } from "@tanstack/react-router";
import type { Finding } from "#contract";
import { LoadAgain } from "../places/load-again.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { NearestFamily } from "./nearest-family.tsx";

/** Thrown by a loader where a family cannot be shown; the page says all that is wrong. */
export class NotShown extends Error {
  readonly findings: readonly Finding[];
  constructor(findings: readonly Finding[]) {
    super("the family cannot be shown");
    this.findings = findings;
  }
}

const Reason = ({ error }: { readonly error: unknown }) => {
  const findings = error instanceof NotShown ? error.findings : [];
  const unknown = findings.find(({ code }) => code === "unknown-family");
  if (unknown !== undefined) return <NearestFamily asked={unknown.got} />;
  return findings.length > 0 ? (
    <FindingsList findings={findings} />
  ) : (
    <p className="lead">
      No answer came. See that the program that serves this page is still running. <LoadAgain />
    </p>
  );
};

/** Stands where a family cannot be shown: what is wrong, and the way back. */
export const RefusedPage = ({ error }: { readonly error: unknown }) => (
  <Sheet
    name="Families"
    sub="this one cannot be shown"
    place="Families"
    titleBlock={{ title: "Families", note: "", rows: [[{ label: "Sheet", value: "1 of 1" }]] }}
    margin={
      <>
        <h2 className="heading">Cannot be shown</h2>
        <p className="margin-lead">The others are not touched by it.</p>
        <p className="margin-links">
          <Link to="/families">All families</Link>
        </p>
      </>
    }
  >
    <div className="page">
      <Reason error={error} />
    </div>
  </Sheet>
);
