import { Link } from "@tanstack/react-router";
import type { AxleName } from "../car.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { DecidedFigures } from "./drawing/decided-figures.tsx";
import { TravelGlance } from "./drawing/travel-glance.tsx";
import type { TravelState } from "./drawing/use-travel.ts";
import { placeWords } from "./model/coordinate-words.ts";
import { findingWords } from "./model/findings-of-sheet.ts";
import { pointRows } from "./model/hard-points.ts";
import { jointRows } from "./model/joints.ts";
import { pathWords } from "./model/path-words.ts";
import { formatSheetPath, isAtOrIn, parseSheetPath, type SheetPath } from "./model/sheet-path.ts";
import { SaveStrip } from "./saving/save-strip.tsx";
import type { Editing } from "./use-editing.ts";

interface EditorMarginProps {
  readonly editing: Editing;
  readonly title: string;
  /** The selected place; null where nothing is. */
  readonly selected: SheetPath | null;
  /** The axle that is open; null where none is. */
  readonly axle: AxleName | null;
  /** null where no axle is open. */
  readonly travel: TravelState | null;
  readonly onGo: (path: string) => void;
}

/** More findings than stand in the margin at once. */
const MOST = 12;

/** Everything to put right, each leading to its field. */
const ToPutRight = ({ editing, onGo }: Pick<EditorMarginProps, "editing" | "onGo">) => {
  const { saving, sheet } = editing;
  const findings = saving.kind === "refused" ? saving.findings : editing.findings;
  if (findings.length === 0) return null;
  return (
    <MarginSection title={findings.length === 1 ? "One thing to put right" : `${findings.length} things to put right`}>
      <ul className="put-right">
        {findings.slice(0, MOST).map((finding) => (
          <li key={`${finding.code} ${finding.path} ${finding.got}`}>
            <button type="button" className="link" onClick={() => onGo(finding.path)}>
              {placeWords(sheet, parseSheetPath(finding.path) ?? [])}
            </button>
            <span className="label">{findingWords(finding)}</span>
          </li>
        ))}
      </ul>
      {findings.length > MOST ? <p className="label">and {findings.length - MOST} more</p> : null}
    </MarginSection>
  );
};

/** What is selected: a point or joint by its name, anything else by its place. */
const selectedWords = (sheet: unknown, path: SheetPath): string => {
  const [axle] = path;
  const place = formatSheetPath(path);
  if (axle !== "front" && axle !== "rear") return pathWords(sheet, path);
  const row = [...pointRows(sheet, axle), ...jointRows(sheet, axle)].find((one) =>
    isAtOrIn(place, formatSheetPath(one.path)),
  );
  return row?.name ?? pathWords(sheet, path);
};

/** What the margin of the editor says: how saving stands, what is to put right, what is selected and what it does. */
export const EditorMargin = ({ editing, title, selected, axle, travel, onGo }: EditorMarginProps) => (
  <>
    <SaveStrip editing={editing} />
    <ToPutRight editing={editing} onGo={onGo} />
    <h2 className="heading">{selected === null ? title : selectedWords(editing.sheet, selected)}</h2>
    {travel === null ? null : travel.effect === null ? (
      <p className="label">{travel.busy ? "The wheel is being moved through its travel." : "Nothing computed yet."}</p>
    ) : (
      <>
        <TravelGlance effect={travel.effect} sheet={editing.sheet} axle={axle} />
        {axle === null ? null : (
          <DecidedFigures figures={travel.effect.figures} sheet={editing.sheet} axle={axle} onGo={onGo} />
        )}
      </>
    )}
    <p className="margin-links">
      <Link to="/families/$familyId" params={{ familyId: editing.id }}>
        Family sheet
      </Link>
      <Link to="/families/$familyId/geometry" params={{ familyId: editing.id }}>
        Geometry
      </Link>
    </p>
  </>
);
