import { useNavigate } from "@tanstack/react-router";
import { useMemo, useRef, useState } from "react";
import { Sheet } from "../shell/sheet.tsx";
import { LiveDrawing } from "./drawing/live-drawing.tsx";
import { useTravel } from "./drawing/use-travel.ts";
import type { EditSearch } from "./edit-search.ts";
import { openedOf } from "./edit-search.ts";
import { EditorMargin } from "./editor-margin.tsx";
import { editorTitleBlock } from "./editor-title-block.ts";
import type { FieldsContext } from "./fields/fields-context.ts";
import type { EditedFamily } from "./load-edit.ts";
import { jointOfPoint, pointOfJoint } from "./model/joints.ts";
import { EDITED_ELSEWHERE, PARTS, placeOf, SECTIONS } from "./model/sections.ts";
import { formatSheetPath, parseSheetPath } from "./model/sheet-path.ts";
import { sheetValueAt } from "./model/sheet-value.ts";
import { formatTyped } from "./model/typed-number.ts";
import { BothVersions } from "./saving/both-versions.tsx";
import { SectionFields } from "./section-fields.tsx";
import { SectionLinks } from "./section-links.tsx";
import { POINT_KEYS } from "./sections/walk-points.ts";
import { useEditing } from "./use-editing.ts";
import { useShownPlace } from "./use-shown-place.ts";

/** On an upright tablet how saving stands and its buttons stay in view. */
const MARGIN_LOW = 96;

interface FamilyEditorProps {
  readonly edited: EditedFamily;
  readonly search: EditSearch;
}

/** The data sheet of one's own car line: fields at the left, the drawing that follows them, and what they do. */
export const FamilyEditor = ({ edited, search }: FamilyEditorProps) => {
  const editing = useEditing(edited);
  const navigate = useNavigate();
  const fields = useRef<HTMLElement>(null);
  const [scale, setScale] = useState<string | null>(null);
  const { part, section } = openedOf(search);
  const axle = part === "front" || part === "rear" ? part : null;
  const at = search.at ?? null;
  const selected = useMemo(() => (at === null ? null : parseSheetPath(at)), [at]);
  const point = selected === null ? null : formatSheetPath(pointOfJoint(selected));
  const travel = useTravel(editing.kept, editing.drawn?.family ?? null, axle);

  const show = useShownPlace(fields, at);
  const go = (next: EditSearch, replace: boolean) =>
    void navigate({ to: "/families/$familyId/edit", params: { familyId: editing.id }, search: next, replace });
  const select = (place: string | null) => {
    if (place === at) return;
    go({ part, section, ...(place === null ? {} : { at: place }) }, true);
  };
  const goTo = (path: string) => {
    show(path, true);
    go({ ...placeOf(parseSheetPath(path) ?? []), at: path }, false);
  };
  const pressPoint = (place: string) => {
    const joint = jointOfPoint(parseSheetPath(place) ?? []);
    if (section === "rubber" && joint !== null) {
      show(formatSheetPath(joint), false);
      select(formatSheetPath(joint));
      return;
    }
    show(place, false);
    go({ part, section: "points", at: place }, section === "points");
  };
  const { undo, redo, save } = editing;
  const keys = useMemo(
    () => [
      { key: "s", does: "save", run: () => void save() },
      { key: "z", does: "one step back", run: undo },
      { key: "y", does: "one step forward", run: redo },
    ],
    [save, undo, redo],
  );
  const context: FieldsContext = { editing, at, onSelect: select, elsewhere: EDITED_ELSEWHERE };
  const title = [
    PARTS.find(({ name }) => name === part)?.title ?? "",
    ...(SECTIONS[part].length > 1 ? [SECTIONS[part].find(({ name }) => name === section)?.title.toLowerCase()] : []),
  ].join(", ");
  const name = formatTyped(sheetValueAt(editing.sheet, ["name"])) || editing.id;
  return (
    <Sheet
      name={name}
      sub="data of the car line"
      place="Families"
      keys={keys}
      {...(section === "points" ? { fieldKeys: POINT_KEYS } : {})}
      subject={null}
      marginLow={MARGIN_LOW}
      titleBlock={editorTitleBlock(editing, title, scale)}
      margin={
        editing.latest === null ? (
          <EditorMargin
            editing={editing}
            title={title}
            selected={selected}
            axle={axle}
            travel={axle === null ? null : travel}
            onGo={goTo}
          />
        ) : (
          <>
            <h2 className="heading">Two versions</h2>
            <p className="margin-lead">
              Yours is kept in this browser, theirs in the store. Choose what stands, then save it.
            </p>
          </>
        )
      }
    >
      {editing.latest === null ? (
        <div className="editor" data-part={part}>
          <SectionLinks familyId={editing.id} part={part} section={section} findings={editing.findings} />
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be within reach of the keyboard */}
          <section ref={fields} className="editor-fields" aria-label={title} tabIndex={0}>
            <SectionFields key={`${part} ${section}`} context={context} part={part} section={section} />
          </section>
          {part === "file" ? null : (
            <LiveDrawing editing={editing} axle={axle} selected={point} onPress={pressPoint} onScale={setScale} />
          )}
        </div>
      ) : (
        <div className="page">
          <BothVersions editing={editing} latest={editing.latest} />
        </div>
      )}
    </Sheet>
  );
};
