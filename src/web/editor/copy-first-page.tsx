import { Link } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import { drawUnderside } from "#drawing";
import type { Family } from "../car.ts";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { CopyForm } from "./copy-form.tsx";
import type { EditedFamily } from "./load-edit.ts";
import { drawnFamilyOf } from "./model/findings-of-sheet.ts";
import { sheetValueAt } from "./model/sheet-value.ts";
import { formatTyped } from "./model/typed-number.ts";

const leastHeight = () => 360;

const BothAxles = ({ family }: { readonly family: Family }) => {
  const draw = useCallback(
    (room: SceneRoom) => drawUnderside(family, { ...room, states: null, legend: false }),
    [family],
  );
  return <FittedScene draw={draw} leastHeight={leastHeight} />;
};

/** A family that comes with the program stays as it is: a copy of one's own is made first, where it is not only an example. */
export const CopyFirstPage = ({ edited }: { readonly edited: EditedFamily }) => {
  const { sheet } = edited.kept;
  const name = formatTyped(sheetValueAt(sheet, ["name"]));
  const family = useMemo(() => drawnFamilyOf(sheet), [sheet]);
  const isExample = edited.kind === "example";
  return (
    <Sheet
      name={name}
      sub="comes with the program"
      place="Families"
      titleBlock={{
        title: isExample ? "Example of a car line" : "Copy of a car line",
        note: "nothing is changed here",
        rows: [[{ label: "Family", value: name }]],
      }}
      margin={
        <>
          <h2 className="heading">It stays as it is</h2>
          <p className="margin-lead">
            {isExample
              ? `${name} is an invented example. None of its figures belongs on a real car, so it is not copied into a workshop of your own.`
              : `${name} comes with the program and cannot be changed. A copy can, in everything; what is invented in it keeps saying so until you put your own figures there.`}
          </p>
          <p className="margin-links">
            {isExample ? <Link to="/families/begin">Begin a car line</Link> : null}
            <Link to="/families/$familyId" params={{ familyId: edited.id }}>
              Family sheet
            </Link>
          </p>
        </>
      }
    >
      <div className="copy-sheet">
        {isExample ? <p className="page lead">An example is only looked at.</p> : <CopyForm edited={edited} />}
        {family === null ? null : <BothAxles family={family} />}
      </div>
    </Sheet>
  );
};
