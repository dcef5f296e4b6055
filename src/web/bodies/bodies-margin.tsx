import { Link } from "@tanstack/react-router";
import type { BodiesSheet } from "#casework";
import { FigureLine } from "../effect/figure-line.tsx";
import { FileInput } from "../shell/file-input.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import type { BodiesView } from "./use-bodies-view.ts";

/** Which file is looked at, and the way to another one. */
export const LayoutSource = ({ view }: { readonly view: BodiesView }) => {
  return (
    <>
      <FileInput label="Read a layout in" onFile={(file) => void view.readIn(file)} />
      <p className="note">
        Looked at: {view.source.name}. A file is what the calculation linkage.bodies-compliance is asked with, without
        loads and faults; it stays in this browser until it is closed.
      </p>
      <p className="margin-links">
        <button type="button" className="link" onClick={view.showExample}>
          The invented example
        </button>
        <Link to="/families">Families</Link>
      </p>
    </>
  );
};

interface BodiesMarginProps {
  readonly view: BodiesView;
  readonly sheet: BodiesSheet;
}

/** What the suspension does, in figures, how sure that is, and what is not computed. */
export const BodiesMargin = ({ view, sheet }: BodiesMarginProps) => (
  <>
    <h2 className="heading">{sheet.torn === null ? "What travel does" : "What the torn one does"}</h2>
    {view.stranger === null ? null : <p className="margin-notice">{view.stranger} is not in this layout.</p>}
    <h3 className="margin-title">All figures; each opens</h3>
    {sheet.figures.map((figure) => (
      <FigureLine key={figure.key} figure={figure} effect={sheet} />
    ))}
    <MarginSection title="Where it binds">{sheet.binds}</MarginSection>
    <MarginSection title="How sure">{sheet.howSure}</MarginSection>
    <MarginSection title="Not computed">{sheet.notComputed}</MarginSection>
    <MarginSection title="Computed so">{sheet.computedSo}</MarginSection>
    <LayoutSource view={view} />
  </>
);
