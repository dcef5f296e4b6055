import { Sheet } from "../shell/sheet.tsx";

/** Stands where a sheet could not be drawn through a fault of ours. */
export const BrokenPage = ({ error }: { readonly error: unknown }) => (
  <Sheet
    name="Not drawn"
    sub="a fault of this program"
    place="Today"
    titleBlock={{ title: "Not drawn", note: "", rows: [[{ label: "Sheet", value: "none" }]] }}
    margin={
      <>
        <h2 className="heading">This sheet could not be drawn</h2>
        <p className="margin-lead">
          Nothing you entered is lost. Load the page again; if it stays so, hand on the words beside.
        </p>
      </>
    }
  >
    <div className="page">
      <pre className="label">{error instanceof Error ? error.message : String(error)}</pre>
    </div>
  </Sheet>
);
