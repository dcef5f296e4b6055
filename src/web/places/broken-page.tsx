import { Sheet } from "../shell/sheet.tsx";
import { LoadAgain } from "./load-again.tsx";

/** Stands where a sheet could not be drawn through a fault of ours. */
export const BrokenPage = ({ error }: { readonly error: unknown }) => (
  <Sheet
    name="Not drawn"
    sub="a part of it did not come, or does not work"
    place="Today"
    titleBlock={{ title: "Not drawn", note: "", rows: [[{ label: "Sheet", value: "none" }]] }}
    margin={
      <>
        <h2 className="heading">This sheet could not be drawn</h2>
        <p className="margin-lead">
          Nothing you entered is lost. See that the program is still running and load the page again; if it stays so,
          hand on the words beside.
        </p>
        <p className="margin-links">
          <LoadAgain />
        </p>
      </>
    }
  >
    <div className="page">
      <pre className="label">{error instanceof Error ? error.message : String(error)}</pre>
    </div>
  </Sheet>
);
