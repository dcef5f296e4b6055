import { Link } from "@tanstack/react-router";
import type { Family } from "../car.ts";
import { Sheet } from "../shell/sheet.tsx";

/** Stands where a car line is no longer only what its entries make: says so, and what can be done instead. */
export const NotCorrectablePage = ({ family }: { readonly family: Family }) => (
  <Sheet
    name={family.name}
    sub="its entries cannot be corrected here"
    place="Families"
    titleBlock={{ title: "Correct a car line", note: "nothing changed", rows: [[{ label: "Sheet", value: "none" }]] }}
    margin={
      <>
        <h2 className="heading">Edited by hand since</h2>
        <p className="margin-links">
          <Link to="/families/$familyId" params={{ familyId: family.id }}>
            Its sheet
          </Link>
          <Link to="/families/begin">Begin another</Link>
        </p>
      </>
    }
  >
    <div className="page nowhere">
      <p className="lead">
        The templates do not make exactly this car line of any entries: it was measured, or its file was edited by hand
        since it was begun.
      </p>
      <p>
        Entries made here would undo that, so none are taken. Its data are corrected one by one in the{" "}
        <Link to="/families/$familyId/edit" params={{ familyId: family.id }}>
          editor
        </Link>
        .
      </p>
    </div>
  </Sheet>
);
