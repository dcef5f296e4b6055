import { Link, useLocation } from "@tanstack/react-router";
import { Sheet } from "../shell/sheet.tsx";
import { nearestPage } from "./nearest-page.ts";

/** Stands where an address leads to no sheet: says so, and which sheet was probably meant. */
export const NowherePage = () => {
  const { pathname } = useLocation();
  const meant = nearestPage(pathname);
  return (
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
      <div className="page nowhere">
        <p className="lead">Nothing is drawn under this address. Perhaps it was cut short on its way here.</p>
        {meant === null ? null : (
          <p>
            Nearest to it is <Link to={meant.path}>{meant.name}</Link>.
          </p>
        )}
        <p className="label">asked for: {pathname}</p>
      </div>
    </Sheet>
  );
};
