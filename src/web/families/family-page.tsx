import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import { drawFamilySheet } from "#drawing";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { familyTitleBlock, yearsOf } from "../underside/family-title-block.ts";
import { FamilyMargin } from "./family-margin.tsx";
import { LifeMargin } from "./life-margin.tsx";

const familyRoute = getRouteApi("/families/$familyId");
const sheetRoute = getRouteApi("/families/$familyId/");
const leastHeight = () => 640;

/** Of the margin so much stays in view on an upright tablet that the ways to the other sheets do, px. */
const MARGIN_LOW = 324;

/** Narrower than this the wear calendar has no room for its scale. */
const LEAST_WIDTH = 540;

/** The family sheet: one car line on one sheet, to print and stand beside. */
export const FamilyPage = () => {
  const loaded = familyRoute.useLoaderData();
  const { family } = loaded;
  const lines = sheetRoute.useLoaderData();
  const own = lines.some(({ id, read_only, off_list }) => id === family.id && !read_only && !off_list);
  const taken = useMemo(() => lines.filter(({ id }) => id !== family.id).map((line) => line.name), [lines, family.id]);
  const { at } = sheetRoute.useSearch();
  const navigate = useNavigate();
  const [scale, setScale] = useState<string | null>(null);
  const life = family.life.find(({ position }) => position === at) ?? null;
  const selected = life?.position ?? null;
  const draw = useCallback((room: SceneRoom) => drawFamilySheet(family, { ...room, selected }), [family, selected]);
  const select = (row: string) =>
    void navigate({ to: "/families/$familyId", params: { familyId: family.id }, search: { at: row } });
  const keys = useMemo(
    () => [
      {
        key: "u",
        does: "the underside",
        run: () => void navigate({ to: "/families/$familyId/underside", params: { familyId: family.id } }),
      },
      {
        key: "g",
        does: "the geometry",
        run: () => void navigate({ to: "/families/$familyId/geometry", params: { familyId: family.id } }),
      },
    ],
    [navigate, family.id],
  );
  return (
    <Sheet
      name={family.name}
      sub={["family", yearsOf(family)].filter((part) => part !== "").join(", ")}
      place="Families"
      keys={keys}
      subject={selected}
      marginLow={MARGIN_LOW}
      titleBlock={familyTitleBlock(family, { title: "Family sheet", sheet: "1 of 7", scale })}
      margin={
        life === null ? (
          <FamilyMargin loaded={loaded} taken={own ? taken : null} />
        ) : (
          <LifeMargin family={family} life={life} />
        )
      }
    >
      <FittedScene draw={draw} leastHeight={leastHeight} leastWidth={LEAST_WIDTH} onScale={setScale} onPress={select} />
    </Sheet>
  );
};
