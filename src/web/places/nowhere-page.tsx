import { Link } from "@tanstack/react-router";
import { Sheet } from "../shell/sheet.tsx";

/** Stands where an address leads to no sheet. */
export const NowherePage = () => (
  <Sheet
    name="No such sheet"
    sub="this address leads nowhere"
    place="Today"
    titleBlock={{ title: "No such sheet", note: "", rows: [[{ label: "Sheet", value: "none" }]] }}
    margin={
      <>
        <h2 className="heading">No such sheet</h2>
        <p className="margin-links">
          <Link to="/">Today</Link>
          <Link to="/families">Families</Link>
        </p>
      </>
    }
  >
    <div className="page">
      <p className="lead">Nothing is drawn under this address. Perhaps it was cut short on its way here.</p>
    </div>
  </Sheet>
);
