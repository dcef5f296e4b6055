import { getRouteApi, Link } from "@tanstack/react-router";
import { useCallback } from "react";
import { drawUnderside } from "#drawing";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { familyTitleBlock, yearsOf } from "../underside/family-title-block.ts";
import { ExportLink } from "./export-link.tsx";

const route = getRouteApi("/families/$familyId");
const LEAST_HEIGHT = { desk: 700, touch: 700 } as const;

/** The family sheet: one car line on one sheet. */
export const FamilyPage = () => {
  const loaded = route.useLoaderData();
  const { family } = loaded;
  const draw = useCallback((room: SceneRoom) => drawUnderside(family, { ...room, states: null }), [family]);
  return (
    <Sheet
      name={family.name}
      sub={["family", yearsOf(family)].filter((part) => part !== "").join(", ")}
      place="Families"
      titleBlock={familyTitleBlock(family, "Family sheet", "1 of 3")}
      margin={
        <>
          <h2 className="heading">{family.name}</h2>
          {family.note === undefined ? null : <p className="margin-lead">{family.note}</p>}
          <p className="margin-links">
            <Link to="/families/$familyId/underside" params={{ familyId: family.id }}>
              Underside
            </Link>
            <Link to="/families/$familyId/geometry" params={{ familyId: family.id }}>
              Geometry
            </Link>
            <ExportLink loaded={loaded} />
          </p>
        </>
      }
    >
      <FittedScene draw={draw} leastHeight={LEAST_HEIGHT} />
    </Sheet>
  );
};
