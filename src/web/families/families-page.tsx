import { getRouteApi, Link } from "@tanstack/react-router";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { FamilyFileInput, ImportProgress } from "./family-import.tsx";
import { FamilyRows } from "./family-rows.tsx";
import { useFamilyImport } from "./use-family-import.ts";

const route = getRouteApi("/families");

/** Families: every car line this workshop knows, its own first. */
export const FamiliesPage = () => {
  const lines = route.useLoaderData();
  const importing = useFamilyImport();
  const own = lines.filter(({ read_only }) => !read_only);
  const supplied = lines.filter(({ read_only }) => read_only);
  return (
    <Sheet
      name="Families"
      sub={`${own.length} of your own, ${supplied.length} invented`}
      place="Families"
      titleBlock={{
        title: "Families",
        note: own.length === 0 ? "everything here is invented" : "invented ones say so",
        rows: [
          [
            { label: "Own", value: `${own.length} of your own` },
            { label: "Invented", value: `${supplied.length} invented` },
            { label: "Sheet", value: "1 of 1" },
          ],
        ],
      }}
      margin={
        <>
          <h2 className="heading">A car nobody has measured?</h2>
          <p className="margin-lead">
            Choose its axles by their silhouettes and give what a tape finds. Every figure then carries the band that
            such a start leaves.
          </p>
          <p className="margin-links">
            <Link to="/families/begin" className="press">
              Begin a car line
            </Link>
          </p>
          <FamilyFileInput importing={importing} />
          <ImportProgress importing={importing} />
        </>
      }
    >
      <div className="page">
        {importing.state.kind === "refused" ? (
          <section className="refused-file">
            <h2>{importing.state.fileName}</h2>
            <FindingsList findings={importing.state.findings} outcome="nothing was kept" />
          </section>
        ) : null}
        {own.length === 0 ? null : <FamilyRows title="Your own" note="kept by this program" lines={own} />}
        <FamilyRows title="Invented" note="come with the program; no such car exists" lines={supplied} />
      </div>
    </Sheet>
  );
};
