import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import type { FamilyLine } from "../server/family-list.ts";
import { FamilyThumbnail } from "./family-thumbnail.tsx";
import { LAYOUT_WORDS } from "./layout-words.ts";
import { namesakeWords } from "./namesakes.ts";

const yearWords = (from: number | undefined, to: number | undefined): string =>
  from === undefined ? (to === undefined ? "" : `to ${to}`) : to === undefined ? `from ${from}` : `${from} to ${to}`;

interface FamilyRowProps {
  readonly line: FamilyLine;
  /** What tells it from another of the same name; null where none has it. */
  readonly apart: string | null;
}

const FamilyRow = ({ line, apart }: FamilyRowProps) => {
  const params = { familyId: line.id };
  if ("findings" in line) {
    return (
      <li className="family-row">
        <span className="family-thumbnail" />
        <span className="family-name">
          {line.name}
          {apart === null ? null : <span className="note family-apart">{apart}</span>}
        </span>
        <span className="label">
          cannot be read; {line.findings.length} {line.findings.length === 1 ? "thing" : "things"} to put right
        </span>
        <Link to="/families/$familyId" params={params}>
          See what
        </Link>
      </li>
    );
  }
  const { name, from_year, to_year, front, rear, invented } = line;
  return (
    <li className="family-row">
      <FamilyThumbnail id={line.id} />
      <span className="family-name">
        <Link to="/families/$familyId" params={params}>
          {name}
        </Link>
        {apart === null ? null : <span className="note family-apart">{apart}</span>}
      </span>
      <span className="label">{yearWords(from_year, to_year)}</span>
      <span>
        {LAYOUT_WORDS[front.layout]} front, {LAYOUT_WORDS[rear.layout]} rear
      </span>
      <span className="label">
        {invented ? "invented" : ""}
        {invented ? ", " : ""}
        {front.rung === rear.rung ? front.rung : `${front.rung} and ${rear.rung}`}
      </span>
      <span className="family-links">
        <Link to="/families/$familyId/underside" params={params} aria-label={`Underside of ${name}`}>
          Underside
        </Link>
        <Link to="/families/$familyId/geometry" params={params} aria-label={`Geometry of ${name}`}>
          Geometry
        </Link>
      </span>
    </li>
  );
};

interface FamilyRowsProps {
  readonly title: string;
  readonly note: string;
  readonly lines: readonly FamilyLine[];
  /** All lines of the page, among which each must be told from the others. */
  readonly all: readonly FamilyLine[];
  /** Stands in place of the lines where there are none. */
  readonly none?: ReactNode;
}

/** Families under one heading. */
export const FamilyRows = ({ title, note, lines, all, none = null }: FamilyRowsProps) => (
  <section className="family-rows">
    <div className="family-rows-head">
      <h2>{title}</h2>
      <p className="note">{note}</p>
    </div>
    {lines.length === 0 ? (
      none
    ) : (
      <ul>
        {lines.map((line) => (
          <FamilyRow key={line.id} line={line} apart={namesakeWords(line, all)} />
        ))}
      </ul>
    )}
  </section>
);
