import { useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import { type Detail, drawUnderside, groupOf, groupOfTarget, NOT_LOOKED_AT, type PlaceGroup } from "#drawing";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { familyTitleBlock, yearsOf } from "./family-title-block.ts";
import { PositionMargin } from "./position-margin.tsx";
import { faultOfMark, type PositionMark, wordsOfMark } from "./position-mark.ts";
import { useMarkedEffect } from "./use-marked-effect.ts";
import { useUnderside } from "./use-underside.ts";

const CORNER_KEYS: readonly { readonly key: string; readonly group: PlaceGroup; readonly does: string }[] = [
  { key: "1", group: "front-right", does: "open the front right corner" },
  { key: "2", group: "front-left", does: "open the front left corner" },
  { key: "3", group: "rear-right", does: "open the rear right corner" },
  { key: "4", group: "rear-left", does: "open the rear left corner" },
  { key: "5", group: "front", does: "open the front axle" },
  { key: "6", group: "rear", does: "open the rear axle" },
];

const leastHeight = () => 530;

/** What the circle beside the selected place shows of its mark. */
const detailOf = (mark: PositionMark | null): Detail =>
  mark === null
    ? { fault: null, words: NOT_LOOKED_AT.toLowerCase() }
    : { fault: faultOfMark(mark)?.kind ?? null, words: wordsOfMark(mark) ?? "sound" };

/** The whole car from below: tap a corner to open it; labels of what has been found select their place. */
export const CarPage = () => {
  const underside = useUnderside();
  const { loaded, states, selected } = underside;
  const { family } = loaded;
  const marked = useMarkedEffect(underside);
  const navigate = useNavigate();
  const [scale, setScale] = useState<string | null>(null);
  const open = useCallback(
    (group: PlaceGroup) =>
      void navigate({
        to: "/families/$familyId/underside/$group",
        params: { familyId: family.id, group },
        // A place that lies elsewhere is left behind; the corner begins with nothing chosen.
        search: ({ at, ...last }) =>
          selected !== null && groupOf(selected) === group && at !== undefined ? { ...last, at } : last,
      }),
    [navigate, family.id, selected],
  );
  const press = (id: string) => {
    const group = groupOfTarget(id);
    if (group === null) underside.select(id);
    else open(group);
  };
  const selectedId = selected?.id ?? null;
  const opened = selected === null ? null : groupOf(selected);
  const detail = useMemo(
    () => detailOf(selected === null ? null : (underside.marks.get(selected.id) ?? null)),
    [selected, underside.marks],
  );
  const draw = useCallback(
    (room: SceneRoom) => drawUnderside(family, { ...room, states, selected: selectedId, opened, detail }),
    [family, states, selectedId, opened, detail],
  );
  const keys = useMemo(
    () => CORNER_KEYS.map(({ key, group, does }) => ({ key, does, run: () => open(group) })),
    [open],
  );
  return (
    <Sheet
      name={family.name}
      sub={["underside", yearsOf(family)].filter((part) => part !== "").join(", ")}
      place="Families"
      keys={keys}
      waiting={marked.waiting}
      subject={underside.selected?.id ?? null}
      titleBlock={familyTitleBlock(family, { title: "Underside, from below", sheet: "2 of 7", scale })}
      margin={
        <PositionMargin
          underside={underside}
          question={marked.question}
          effect={marked.effect}
          how="Tap a corner: it opens as two sheets with every place on it. What is hatched nobody has looked at."
        />
      }
    >
      <FittedScene draw={draw} leastHeight={leastHeight} onScale={setScale} onPress={press} />
    </Sheet>
  );
};
