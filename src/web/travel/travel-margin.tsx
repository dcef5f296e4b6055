import { Link } from "@tanstack/react-router";
import { formatTravelCsv, type TravelSheet, type TravelSheetQuestion } from "#casework";
import { layoutDoubt } from "#drawing";
import { byQuery } from "../cases/case/recorder.ts";
import { searchOfCondition } from "../effect/condition-in-address.ts";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { rungWords } from "../effect/rung-words.ts";
import { CsvLink } from "../printing/csv-link.tsx";
import { PrintButton } from "../printing/print-button.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { RowTable, RubberTable } from "./change-table.tsx";
import { FigureTables } from "./figure-tables.tsx";
import { lookedAtPlace } from "./travel-search.ts";
import type { TravelView } from "./use-travel-view.ts";

interface TravelMarginProps {
  readonly view: TravelView;
  readonly sheet: TravelSheet;
  /** The question the sheet answers. */
  readonly asked: TravelSheetQuestion;
}

/** What the lines say beside each other. */
export const TravelHead = ({ sheet: { verdicts } }: Pick<TravelMarginProps, "sheet">) => {
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
    </>
  );
};

/** What torn and firmer do, how far toe and camber go, and how sure that is. */
export const TravelMargin = ({ view, sheet, asked }: TravelMarginProps) => {
  const { rows, rubber } = sheet;
  const rungs = [...new Set(rows.map((row) => rungWords(row.rung, row.invented)))];
  return (
    <>
      {rubber.map((row) => (
        <RubberTable key={row.words} row={row} />
      ))}
      {rows.map((row) => (
        <RowTable key={row.words} row={row} name={view.family.name} />
      ))}
      <FigureTables sheet={sheet} />
      <MarginSection title="Where it binds">
        {rows
          .filter(({ subject }) => subject !== "lowered")
          .map(({ words, subject, binds }) => (subject === "beside" ? `${words}: ${binds}` : binds))
          .join(" ")}
      </MarginSection>
      {sheet.open.length === 0 ? null : (
        <MarginSection title="What would settle it">
          {sheet.open.map(({ asked: between, settle }) => (
            <p key={between}>
              {between}: {settle}
            </p>
          ))}
        </MarginSection>
      )}
      <MarginSection title="How sure">
        {rubber.flatMap(({ means }) => (means === null ? [] : [`${means} `])).join("")}
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
        <CsvLink text={formatTravelCsv(sheet, asked)} name={`${view.family.id}-${view.corner}-travel`} />
        <Link
          to="/families/$familyId/geometry"
          params={{ familyId: view.family.id }}
          search={{
            ...lookedAtPlace(view.search),
            ...searchOfCondition(view.condition),
            corner: view.corner,
          }}
        >
          Geometry
        </Link>
        <Link
          to="/families/$familyId/hold"
          params={{ familyId: view.family.id }}
          search={{ corner: view.corner, ...(view.search.torn === undefined ? {} : { at: view.search.torn }) }}
        >
          How to hold it
        </Link>
        <Link to="/families/$familyId" params={{ familyId: view.family.id }}>
          Family sheet
        </Link>
      </p>
    </>
  );
};
