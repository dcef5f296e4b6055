import { Link } from "@tanstack/react-router";
import {
  type BodiesAsked,
  type BodiesFault,
  type BodiesFile,
  type BodiesSheet,
  doubtWords,
  formatBodiesCsv,
} from "#casework";
import { byQuery } from "../cases/case/recorder.ts";
import { FigureLine } from "../effect/figure-line.tsx";
import { CsvLink } from "../printing/csv-link.tsx";
import { FileLink } from "../printing/file-link.tsx";
import { PrintButton } from "../printing/print-button.tsx";
import { SourceWords } from "../reference/source-words.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { FileInput } from "../shell/file-input.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { FigureTables } from "../travel/figure-tables.tsx";
import { FaultAmount } from "./fault-amount.tsx";
import { layoutPathWords } from "./layout-path-words.ts";
import type { BodiesView } from "./use-bodies-view.ts";

/** What is doubtful in the file; nothing where nothing is. */
const Doubts = ({ file }: { readonly file: BodiesFile }) => {
  const words = doubtWords(file);
  return words === null ? null : <MarginSection title="Doubtful in the file">{words}</MarginSection>;
};

/** Which file is looked at, and the way to another one. */
export const LayoutSource = ({ view }: { readonly view: BodiesView }) => (
  <>
    {"file" in view.read ? <Doubts file={view.read.file} /> : null}
    <FileInput label="Read a layout in" onFile={(file) => void view.readIn(file)} />
    <p className="note">
      Looked at: {view.source.name}. To begin a file of your own, save the example and change it: its points, joints and
      links, and beside them spring, wheel load and rubber. A layout alone is moved as a rigid linkage. A file stays in
      this browser until it is closed.
    </p>
    <p className="margin-links">
      <button type="button" className="link" onClick={view.showExample}>
        The invented example
      </button>
      <FileLink text={view.example} type="application/json" fileName="layout-example.json">
        Save the example
      </FileLink>
      <Link to="/families">Families</Link>
    </p>
  </>
);

/** Printed sheet, and the way to another file. */
export const LayoutLinks = ({ view }: { readonly view: BodiesView }) => {
  const { asked } = view;
  return (
    <>
      {asked === null ? null : (
        <p className="margin-links">
          <PrintButton
            print={() => printAskedSheet({ kind: "layout", question: asked }, byQuery())}
            nameOf={layoutPathWords}
          />
        </p>
      )}
      <LayoutSource view={view} />
    </>
  );
};

const HEADINGS: Readonly<Record<BodiesFault["kind"], string>> = {
  torn: "What the torn one does",
  loose: "What the loose one does",
  firmer: "What the firmer one does",
};

interface BodiesMarginProps {
  readonly view: BodiesView;
  readonly sheet: BodiesSheet;
  /** The question the sheet answers. */
  readonly asked: BodiesAsked;
}

/** What the suspension does, in figures, how sure that is, and what is not computed. */
export const BodiesMargin = ({ view, sheet, asked }: BodiesMarginProps) => (
  <>
    <h2 className="heading">{sheet.fault === null ? "What travel does" : HEADINGS[sheet.fault.kind]}</h2>
    {view.stranger === null ? null : <p className="margin-notice">{view.stranger} is not in this layout.</p>}
    <FaultAmount view={view} />
    <h3 className="margin-title">All figures; each opens</h3>
    {sheet.figures.map((figure) => (
      <FigureLine key={figure.key} figure={figure} effect={sheet} />
    ))}
    <FigureTables
      sheet={sheet}
      basis={
        <p className="note">
          Relation: all bodies in balance at the asked force, contact height held; band 95 % from exact derivatives by
          every point and rate. Source: <SourceWords line="forward-derivatives; docs/method/linkage-bodies.md" />
        </p>
      }
    />
    <MarginSection title="Where it binds">{sheet.binds}</MarginSection>
    <MarginSection title="How sure">{sheet.howSure}</MarginSection>
    <MarginSection title="Not computed">{sheet.notComputed}</MarginSection>
    <MarginSection title="Computed so">{sheet.computedSo}</MarginSection>
    <p className="margin-links">
      <CsvLink text={formatBodiesCsv(sheet, asked)} name="layout-over-travel" />
    </p>
    <LayoutLinks view={view} />
  </>
);
