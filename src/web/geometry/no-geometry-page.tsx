import { getRouteApi, Link } from "@tanstack/react-router";
import { Sheet } from "../shell/sheet.tsx";
import { familyTitleBlock } from "../underside/family-title-block.ts";

const familyRoute = getRouteApi("/families/$familyId");

/** Stands where a family has no joint the linkage could compute with. */
export const NoGeometryPage = () => {
  const { family } = familyRoute.useLoaderData();
  return (
    <Sheet
      name={family.name}
      sub="geometry"
      place="Families"
      titleBlock={familyTitleBlock(family, { title: "Geometry", sheet: "3 of 7", scale: null })}
      margin={
        <>
          <h2 className="heading">No rubber on file</h2>
          <p className="margin-lead">Give a joint of the family sheet its rates, and what it does is computed here.</p>
          <p className="margin-links">
            <Link to="/families/$familyId" params={{ familyId: family.id }}>
              Family sheet
            </Link>
          </p>
        </>
      }
    >
      <div className="page">
        <p className="lead">Nothing of this family can be computed yet.</p>
      </div>
    </Sheet>
  );
};
