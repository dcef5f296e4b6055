import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useMemo, useState } from "react";
import { groupWords } from "#drawing";
import { Sheet } from "../shell/sheet.tsx";
import { familyTitleBlock } from "./family-title-block.ts";
import { OpenedScene } from "./opened-scene.tsx";
import { PositionMargin } from "./position-margin.tsx";
import { useMarkedEffect } from "./use-marked-effect.ts";
import { useUnderside } from "./use-underside.ts";

const route = getRouteApi("/families/$familyId/underside/$group");

/** One corner or axle of the underside, opened. */
export const GroupPage = () => {
  const { group } = route.useParams();
  const underside = useUnderside(group);
  const { family } = underside.loaded;
  const marked = useMarkedEffect(underside);
  const navigate = useNavigate();
  const [scale, setScale] = useState<string | null>(null);
  const keys = useMemo(
    () => [
      {
        key: "w",
        does: "back to the whole car",
        run: () =>
          void navigate({
            to: "/families/$familyId/underside",
            params: { familyId: family.id },
            search: (last) => last,
          }),
      },
    ],
    [navigate, family.id],
  );
  return (
    <Sheet
      name={family.name}
      sub={`underside, ${groupWords(group).toLowerCase()}`}
      place="Families"
      keys={keys}
      waiting={marked.waiting}
      subject={underside.selected?.id ?? null}
      titleBlock={familyTitleBlock(family, { title: groupWords(group), sheet: "2 of 7", scale })}
      margin={
        <PositionMargin
          underside={underside}
          question={marked.question}
          effect={marked.effect}
          how="Tap a name. What is hatched nobody has looked at."
        />
      }
    >
      <OpenedScene underside={underside} group={group} onScale={setScale} />
    </Sheet>
  );
};
