import { Link } from "@tanstack/react-router";
import { useEffect, useState } from "react";
import {
  formatNumber,
  formatTravelCsv,
  type TravelChange,
  type TravelRow,
  type TravelSheet,
  type TravelSheetQuestion,
} from "#casework";
import { layoutDoubt } from "#drawing";
import { mmFromMetres } from "#quantity";
import { byQuery } from "../cases/case/recorder.ts";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { rungWords } from "../effect/rung-words.ts";
import { PrintButton } from "../printing/print-button.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { FigureTables } from "./figure-tables.tsx";
import type { TravelView } from "./use-travel-view.ts";

interface CsvLinkProps {
  readonly sheet: TravelSheet;
  readonly asked: TravelSheetQuestion;
  readonly name: string;
}

/** Hands the lines to the browser as a file of comma-separated values. */
const CsvLink = ({ sheet, asked, name }: CsvLinkProps) => {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([formatTravelCsv(sheet, asked)], { type: "text/csv" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [sheet, asked]);
  return (
    <a href={address} download={`${name}.csv`}>
      Lines as CSV
    </a>
  );
};

const signed = (value: number): string => `${value > 0 ? "+" : ""}${formatNumber(value, 2)}°`;
const heightWords = ({ travel }: TravelChange): string => {
  const mm = mmFromMetres(travel);
  return `${mm > 0 ? "+" : ""}${formatNumber(mm, 0)} mm`;
};

const ChangeCell = ({ change }: { readonly change: TravelChange }) =>
  change.sure ? (
    <td>
      {signed(change.value)}
      <span className="note">
        {signed(change.band[0])} to {signed(change.band[1])}
      </span>
    </td>
  ) : (
    <td>
      <span className="note">sign not sure</span>
    </td>
  );

/** How toe and camber of each whole corner change from its ride height. */
const ChangeTable = ({ row, name }: { readonly row: TravelRow; readonly name: string }) => (
  <table className="travel-table">
    <caption>{row.subject === "sound" ? name : row.words}</caption>
    <thead>
      <tr>
        <th scope="col">from ride height</th>
        {row.toe.map((change) => (
          <th key={change.travel} scope="col">
            {heightWords(change)}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {(["toe", "camber"] as const).map((key) => (
        <tr key={key}>
          <th scope="row">{key}</th>
          {row[key].map((change) => (
            <ChangeCell key={change.travel} change={change} />
          ))}
        </tr>
      ))}
    </tbody>
  </table>
);

interface TravelMarginProps {
  readonly view: TravelView;
  readonly sheet: TravelSheet;
  /** The question the sheet answers. */
  readonly asked: TravelSheetQuestion;
}

/** What the lines say, how far toe and camber go, and how sure that is. */
export const TravelMargin = ({ view, sheet, asked }: TravelMarginProps) => {
  const verdicts = sheet.sentences.slice(sheet.rows.length);
  const rungs = [...new Set(sheet.rows.map((row) => rungWords(row.rung, row.invented)))];
  return (
    <>
      <h2 className="heading">{verdicts.length > 0 ? "Which moves more" : "Over its travel"}</h2>
      {verdicts.length > 0 ? (
        <ul className="travel-verdicts">
          {verdicts.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : null}
      {sheet.rows.map((row) => (
        <ChangeTable key={row.words} row={row} name={view.family.name} />
      ))}
      <FigureTables sheet={sheet} />
      <MarginSection title="How sure">
        {layoutDoubt(view.family, [asked.corner.startsWith("front") ? "front" : "rear"])}Geometry: {rungs.join("; ")}.
        Below each value stands where it lies with 95 %; a value whose sign is less than 97.5 % sure is not printed. Two
        car lines are compared as independent, with the rack moved so that both turn the same way. Caster, trail, scrub,
        spring and the patch have no band here.
      </MarginSection>
      <MarginSection title="Computed so">
        Toe, camber and the place of the wheel: links with rubber ends in balance at the asked force, the contact height
        held. The other figures: the same linkage without rubber, rack as set.{" "}
        <Link to="/reference" search={{ source: "two-force-links" }}>
          Relation and source
        </Link>
      </MarginSection>
      <p className="margin-links">
        <PrintButton
          print={() => printAskedSheet({ kind: "travel", question: asked }, byQuery())}
          nameOf={conditionPathWords}
        />
        <CsvLink sheet={sheet} asked={asked} name={`${view.family.id}-${view.corner}`} />
        <Link to="/families/$familyId/geometry" params={{ familyId: view.family.id }}>
          Geometry
        </Link>
        <Link to="/families/$familyId" params={{ familyId: view.family.id }}>
          Family sheet
        </Link>
      </p>
    </>
  );
};
